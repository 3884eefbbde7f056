package org.stook.comparison.table;

import java.util.Locale;

/** One check: what Stook, the reference pipeline and the oracle reach, and the bar. A figure that there is not is NaN. */
public final class Row {
    private final String check;
    private final int digits;
    private double stook = Double.NaN;
    private double reference = Double.NaN;
    private double oracle = Double.NaN;
    private String bar = "";
    private String met = "";

    private Row(String check, int digits) {
        this.check = check;
        this.digits = digits;
    }

    /** @param digits behind the decimal point */
    public static Row of(String check, int digits) {
        return new Row(check, digits);
    }

    public Row stook(double value) {
        stook = value;
        return this;
    }

    public Row reference(double value) {
        reference = value;
        return this;
    }

    public Row oracle(double value) {
        oracle = value;
        return this;
    }

    /** The bar that Stook's figure must not pass. Call after {@link #stook}. */
    public Row atMost(double value) {
        return bar("<= " + number(value, digits), stook <= value);
    }

    /** The bar that Stook's figure must reach. Call after {@link #stook}. */
    public Row atLeast(double value) {
        return bar(">= " + number(value, digits), stook >= value);
    }

    /** A bar in words. */
    public Row bar(String words, boolean isMet) {
        bar = words;
        met = Double.isNaN(stook) ? "" : isMet ? "yes" : "NO";
        return this;
    }

    String[] cells() {
        return new String[] {check, number(stook, digits), number(reference, digits), number(oracle, digits), bar, met};
    }

    public static String number(double value, int digits) {
        return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, "%." + digits + "f", value);
    }
}
