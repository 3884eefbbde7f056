package org.stook.imaging.tone;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.LumaChroma;

/**
 * The look-up tables of one tone for one bit depth: for each channel code to value, and from which codes on it clips.
 *
 * @param values encoded values, or light where the channels still have to meet
 * @param lowEnd codes below are clipped to black
 * @param highStart codes from here on are clipped to white
 * @param unclipped values of 8-bit codes, the first and the last of which are repeated at least {@link LumaChroma#REACH} times,
 *     for codes that were made of luma and chroma and not clipped yet: those of three channels one behind the other, and as
 *     many more as make the length a power of two; empty for other frames
 */
@SuppressWarnings("ArrayRecordComponent") // tables, read by index, never compared
record ChannelTables(float[][] values, int[] lowEnd, int[] highStart, float[] unclipped) {
    private static final int EIGHT_BIT = 256;
    /** Values of a channel in {@link #unclipped}. */
    private static final int WIDE = 1024;

    static ChannelTables unchanged(int channels, int maxCode) {
        float[] table = new float[maxCode + 1];
        for (int code = 0; code <= maxCode; code++) table[code] = code / (float) maxCode;
        ChannelTables tables = blank(channels, maxCode);
        Arrays.fill(tables.values, table);
        return tables.widened();
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
        return tables.widened();
    }

    private static ChannelTables blank(int channels, int maxCode) {
        int[] highStart = new int[channels];
        Arrays.fill(highStart, maxCode + 1);
        return new ChannelTables(new float[channels][], new int[channels], highStart, new float[0]);
    }

    private ChannelTables widened() {
        if (values.length != 3 || values[0].length != EIGHT_BIT) return this;
        float[] wide = new float[4 * WIDE];
        for (int c = 0; c < values.length; c++) {
            for (int i = 0; i < WIDE; i++) {
                wide[c * WIDE + i] = values[c][Math.max(0, Math.min(EIGHT_BIT - 1, i - LumaChroma.REACH))];
            }
        }
        return new ChannelTables(values, lowEnd, highStart, wide);
    }

    /** Where in {@link #unclipped} code 0 of a channel lies. */
    static int unclipped(int channel) {
        return channel * WIDE + LumaChroma.REACH;
    }
}
