package org.stook.imaging.tone;

/** A colour in CIELAB (CIE 15:2018 section 8.2.1): lightness 0 to 100, a* red to green, b* yellow to blue. */
public record Lab(double l, double a, double b) {
    private static final double EPSILON = 216.0 / 24389;
    private static final double KAPPA = 24389.0 / 27;

    /** CIELAB of X, Y, Z relative to a white, both in any one scale. */
    public static Lab of(double[] xyz, double[] white) {
        double fx = f(xyz[0] / white[0]);
        double fy = f(xyz[1] / white[1]);
        double fz = f(xyz[2] / white[2]);
        return new Lab(116 * fy - 16, 500 * (fx - fy), 200 * (fy - fz));
    }

    private static double f(double ratio) {
        return ratio > EPSILON ? StrictMath.cbrt(ratio) : (KAPPA * ratio + 16) / 116;
    }
}
