package org.stook.imaging.tone;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Luma;
import org.stook.imaging.frame.LumaChroma;
import org.stook.imaging.frame.Samples;

/** The loops of {@link Tone}: one row of codes at a time, counting what clips. One thread. */
final class ToneRows {
    private static final int RED = ChannelTables.unclipped(0);
    private static final int GREEN = ChannelTables.unclipped(1);
    private static final int BLUE = ChannelTables.unclipped(2);

    private final ChannelTables tables;
    private final @Nullable ChannelMix mix;
    private final EncodingTable[] encodings;
    private long low;
    private long high;
    private long outOfGamut;
    private long samples;

    ToneRows(ChannelTables tables, Optional<ChannelMix> mix, EncodingTable[] encodings) {
        this.tables = tables;
        this.mix = mix.orElse(null);
        this.encodings = encodings;
    }

    /** Counts what clips in a row, then tones it. */
    void countAndTone(int[] codes, float[][] out, int start) {
        int channels = tables.values().length;
        for (int c = 0; c < channels; c++) count(codes, c, channels);
        samples += codes.length;
        tone(codes, out, start);
    }

    /**
     * @param codes interleaved
     * @param out one array a channel, filled from {@code start} on
     */
    void tone(int[] codes, float[][] out, int start) {
        int channels = tables.values().length;
        if (mix == null) {
            for (int c = 0; c < channels; c++) lookUp(codes, c, channels, out[c], start);
        } else if (mix.monochrome()) {
            mixToGrey(codes, mix.matrix().m(), out[0], start);
        } else {
            mixColours(codes, mix.matrix().m(), out, start);
        }
    }

    /** Whether each channel goes through its table and no more. */
    boolean isByTableAlone() {
        return mix == null;
    }

    /**
     * Three channels of 8-bit codes, straight from the frame, and its luminance, one behind the other. In this loop and the
     * next one array takes and one table gives all channels, and no index can leave the table: with fewer arrays at hand and
     * fewer checks they take a third less time.
     */
    void lookUpWithLuma(Samples.Eight samples, int at, int count, float[] out) {
        byte[] codes = samples.codes();
        float[] wide = tables.unclipped();
        for (int x = 0, i = at; x < count; x++, i += 3) {
            int r = codes[i] & 0xff;
            int g = codes[i + 1] & 0xff;
            int b = codes[i + 2] & 0xff;
            out[x] = wide[(RED + r) & (wide.length - 1)];
            out[x + count] = wide[(GREEN + g) & (wide.length - 1)];
            out[x + 2 * count] = wide[(BLUE + b) & (wide.length - 1)];
            out[x + 3 * count] = Luma.of(r, g, b) * (1f / 255);
        }
    }

    /** The same from luma and chroma. */
    void lookUpWithLuma(Samples.EightLumaChroma samples, int at, int count, float[] out) {
        byte[] codes = samples.codes();
        float[] wide = tables.unclipped();
        for (int x = 0, i = at; x < count; x++, i += 3) {
            int luma = codes[i] & 0xff;
            int cb = codes[i + 1] & 0xff;
            int cr = codes[i + 2] & 0xff;
            out[x] = wide[(RED + luma + LumaChroma.redAbove(cr)) & (wide.length - 1)];
            out[x + count] = wide[(GREEN + luma + LumaChroma.greenAbove(cb, cr)) & (wide.length - 1)];
            out[x + 2 * count] = wide[(BLUE + luma + LumaChroma.blueAbove(cb)) & (wide.length - 1)];
            out[x + 3 * count] = luma * (1f / 255);
        }
    }

    Clipping clipping() {
        return new Clipping(low, high, outOfGamut, samples);
    }

    private void count(int[] codes, int channel, int step) {
        int lowEnd = tables.lowEnd()[channel];
        int highStart = tables.highStart()[channel];
        for (int i = channel; i < codes.length; i += step) {
            if (codes[i] < lowEnd) low++;
            else if (codes[i] >= highStart) high++;
        }
    }

    private void lookUp(int[] codes, int channel, int step, float[] out, int start) {
        float[] table = tables.values()[channel];
        for (int i = channel, to = start; i < codes.length; i += step) out[to++] = table[codes[i]];
    }

    private void mixToGrey(int[] codes, double[] weights, float[] out, int start) {
        float[] red = tables.values()[0];
        float[] green = tables.values()[1];
        float[] blue = tables.values()[2];
        for (int i = 0, to = start; i < codes.length; i += 3) {
            double light =
                    weights[0] * red[codes[i]] + weights[1] * green[codes[i + 1]] + weights[2] * blue[codes[i + 2]];
            out[to++] = encoded(light, encodings[0]);
        }
    }

    private void mixColours(int[] codes, double[] m, float[][] out, int start) {
        float[] red = tables.values()[0];
        float[] green = tables.values()[1];
        float[] blue = tables.values()[2];
        for (int i = 0, to = start; i < codes.length; i += 3, to++) {
            double r = red[codes[i]];
            double g = green[codes[i + 1]];
            double b = blue[codes[i + 2]];
            out[0][to] = encoded(m[0] * r + m[1] * g + m[2] * b, encodings[0]);
            out[1][to] = encoded(m[3] * r + m[4] * g + m[5] * b, encodings[1]);
            out[2][to] = encoded(m[6] * r + m[7] * g + m[8] * b, encodings[2]);
        }
    }

    private float encoded(double light, EncodingTable encoding) {
        if (Tone.isOutOfGamut(light)) outOfGamut++;
        return encoding.encode(Math.max(0, Math.min(1, light)));
    }
}
