package org.stook.imaging.tone;

import org.jspecify.annotations.Nullable;

/**
 * The look-up tables of one tone for one bit depth: for each channel code to value, and from which codes on it clips.
 *
 * @param values encoded values, or light where the channels still have to meet
 * @param lowEnd codes below are clipped to black
 * @param highStart codes from here on are clipped to white
 */
@SuppressWarnings("ArrayRecordComponent") // tables, read by index, never compared
record ChannelTables(float[][] values, int[] lowEnd, int[] highStart) {
    static ChannelTables unchanged(int channels, int maxCode) {
        float[] table = new float[maxCode + 1];
        for (int code = 0; code <= maxCode; code++) table[code] = code / (float) maxCode;
        ChannelTables tables = blank(channels, maxCode);
        java.util.Arrays.fill(tables.values, table);
        return tables;
    }

    /** @param encoding what to apply after the curves; none keeps light */
    static ChannelTables of(ToneCurve[] curves, ColourSpace in, @Nullable ColourSpace encoding, int maxCode) {
        ChannelTables tables = blank(curves.length, maxCode);
        for (int c = 0; c < curves.length; c++) {
            float[] table = new float[maxCode + 1];
            for (int code = 0; code <= maxCode; code++) {
                double stretched = curves[c].stretched(in.toLight(c, code / (double) maxCode));
                double light = curves[c].light(stretched);
                table[code] = (float) (encoding == null ? light : encoding.fromLight(c, light));
                if (ToneCurve.isBelowBlack(stretched)) tables.lowEnd[c] = code + 1;
                if (ToneCurve.isAboveWhite(stretched)) tables.highStart[c] = Math.min(tables.highStart[c], code);
            }
            tables.values[c] = table;
        }
        return tables;
    }

    private static ChannelTables blank(int channels, int maxCode) {
        int[] highStart = new int[channels];
        java.util.Arrays.fill(highStart, maxCode + 1);
        return new ChannelTables(new float[channels][], new int[channels], highStart);
    }
}
