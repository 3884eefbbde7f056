package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/**
 * A few rows of a frame, already resampled to the columns of the area: what the vertical taps of the present row of the
 * area need, and no more, so that it stays in the cache. Rows must be asked for from above to below.
 */
final class Strip {
    private final SourceRows source;
    private final RowCoordinates at;
    private final float[][] lines;
    private final float[][][] ring;
    private int next;

    /** @param depth rows to be had at the same time */
    Strip(SourceRows source, int width, int channels, Area area, Placement placement, int depth) {
        this.source = source;
        this.at = new RowCoordinates(area, placement);
        this.lines = new float[channels][width];
        this.ring = new float[channels][depth][area.width()];
    }

    /** Makes rows {@code first} to {@code last} of the frame available. */
    void advance(int first, int last) {
        for (next = Math.max(next, first); next <= last; next++) {
            source.read(next, lines);
            at.locate(next);
            int slot = next % ring[0].length;
            if (lines.length == 3) resample(lines, ring[0][slot], ring[1][slot], ring[2][slot]);
            else resample(lines[0], ring[0][slot]);
        }
    }

    /** Row {@code v} of the frame at the area's columns. */
    float[] row(int channel, int v) {
        return ring[channel][v % ring[channel].length];
    }

    private void resample(float[] in, float[] out) {
        float[] w = Kernel.weights();
        int[] column = at.column;
        int[] weight = at.weight;
        for (int i = 0; i < out.length; i++) {
            int p = column[i];
            int k = weight[i];
            out[i] = w[k] * in[p]
                    + w[k + 1] * in[p + 1]
                    + w[k + 2] * in[p + 2]
                    + w[k + 3] * in[p + 3]
                    + w[k + 4] * in[p + 4]
                    + w[k + 5] * in[p + 5]
                    + w[k + 6] * in[p + 6]
                    + w[k + 7] * in[p + 7]
                    + w[k + 8] * in[p + 8]
                    + w[k + 9] * in[p + 9];
        }
    }

    /** Three channels at once: the weights are fetched only once. */
    private void resample(float[][] in, float[] red, float[] green, float[] blue) {
        float[] w = Kernel.weights();
        for (int i = 0; i < red.length; i++) {
            int p = at.column[i];
            int k = at.weight[i];
            float a = w[k], b = w[k + 1], c = w[k + 2], d = w[k + 3], e = w[k + 4];
            float f = w[k + 5], g = w[k + 6], h = w[k + 7], m = w[k + 8], n = w[k + 9];
            red[i] = weighed(in[0], p, a, b, c, d, e) + weighed(in[0], p + 5, f, g, h, m, n);
            green[i] = weighed(in[1], p, a, b, c, d, e) + weighed(in[1], p + 5, f, g, h, m, n);
            blue[i] = weighed(in[2], p, a, b, c, d, e) + weighed(in[2], p + 5, f, g, h, m, n);
        }
    }

    private static float weighed(float[] in, int p, float a, float b, float c, float d, float e) {
        return a * in[p] + b * in[p + 1] + c * in[p + 2] + d * in[p + 3] + e * in[p + 4];
    }
}
