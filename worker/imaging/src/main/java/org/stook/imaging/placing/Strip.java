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
                    + w[k + 5] * in[p + 5];
        }
    }

    /** Three channels at once: the weights are fetched only once. */
    private void resample(float[][] in, float[] red, float[] green, float[] blue) {
        float[] w = Kernel.weights();
        float[] r = in[0];
        float[] g = in[1];
        float[] b = in[2];
        for (int i = 0; i < red.length; i++) {
            int p = at.column[i];
            int k = at.weight[i];
            float u = w[k], v = w[k + 1], x = w[k + 2], y = w[k + 3], z = w[k + 4], t = w[k + 5];
            red[i] = u * r[p] + v * r[p + 1] + x * r[p + 2] + y * r[p + 3] + z * r[p + 4] + t * r[p + 5];
            green[i] = u * g[p] + v * g[p + 1] + x * g[p + 2] + y * g[p + 3] + z * g[p + 4] + t * g[p + 5];
            blue[i] = u * b[p] + v * b[p + 1] + x * b[p + 2] + y * b[p + 3] + z * b[p + 4] + t * b[p + 5];
        }
    }
}
