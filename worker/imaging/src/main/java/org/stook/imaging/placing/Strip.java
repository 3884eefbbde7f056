package org.stook.imaging.placing;

import java.util.Arrays;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/**
 * A few rows of a frame, already resampled to the columns of the area: what the vertical taps of the present row of the
 * area need, and no more, so that it stays in the cache. Rows must be asked for from above to below.
 */
final class Strip {
    /** Columns by which rows of the frame above and below the area's corners may need more, where frames are turned. */
    private static final int SLANT = 3;

    private final SourceRows source;
    private final RowCoordinates at;
    private final int from;
    private final float[][] lines;
    private final float[][][] ring;
    private int next;

    /**
     * @param width of the frame, pixels
     * @param depth rows to be had at the same time
     */
    Strip(SourceRows source, int width, int channels, Area area, Placement placement, int depth) {
        this.source = source;
        double left = Double.MAX_VALUE;
        double right = 0;
        for (int x : new int[] {area.x(), area.x() + area.width() - 1}) {
            for (int y : new int[] {area.y(), area.y() + area.height() - 1}) {
                left = Math.min(left, placement.x(x, y));
                right = Math.max(right, placement.x(x, y));
            }
        }
        this.from = Math.max(0, (int) left + Kernel.FIRST - SLANT);
        int to = Math.min(width, (int) right + Kernel.FIRST + Kernel.TAPS + SLANT);
        this.at = new RowCoordinates(area, placement, from);
        this.lines = new float[channels][to - from];
        this.ring = new float[channels][depth][area.width()];
    }

    /** Makes rows {@code first} to {@code last} of the frame available. */
    void advance(int first, int last) {
        for (next = Math.max(next, first); next <= last; next++) {
            source.read(next, from, lines);
            at.locate(next);
            int slot = next % ring[0].length;
            if (lines.length >= 3) resampleTogether(slot);
            else for (int c = 0; c < lines.length; c++) resample(lines[c], ring[c][slot]);
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

    /** All channels at once, so that weights are fetched once; half the taps at a time, so that they stay in registers. */
    private void resampleTogether(int slot) {
        for (int c = 0; c < lines.length; c++) Arrays.fill(ring[c][slot], 0);
        for (int first = 0; first < Kernel.TAPS; first += 5) {
            if (lines.length == 4) addFive(first, ring[0][slot], ring[1][slot], ring[2][slot], ring[3][slot]);
            else addFive(first, ring[0][slot], ring[1][slot], ring[2][slot]);
        }
    }

    private void addFive(int first, float[] red, float[] green, float[] blue) {
        float[] w = Kernel.weights();
        float[] r = lines[0];
        float[] g = lines[1];
        float[] b = lines[2];
        for (int i = 0; i < red.length; i++) {
            int p = at.column[i] + first;
            int k = at.weight[i] + first;
            float s = w[k], t = w[k + 1], u = w[k + 2], v = w[k + 3], x = w[k + 4];
            red[i] += s * r[p] + t * r[p + 1] + u * r[p + 2] + v * r[p + 3] + x * r[p + 4];
            green[i] += s * g[p] + t * g[p + 1] + u * g[p + 2] + v * g[p + 3] + x * g[p + 4];
            blue[i] += s * b[p] + t * b[p + 1] + u * b[p + 2] + v * b[p + 3] + x * b[p + 4];
        }
    }

    private void addFive(int first, float[] red, float[] green, float[] blue, float[] grey) {
        float[] w = Kernel.weights();
        float[] r = lines[0];
        float[] g = lines[1];
        float[] b = lines[2];
        float[] l = lines[3];
        for (int i = 0; i < red.length; i++) {
            int p = at.column[i] + first;
            int k = at.weight[i] + first;
            float s = w[k], t = w[k + 1], u = w[k + 2], v = w[k + 3], x = w[k + 4];
            red[i] += s * r[p] + t * r[p + 1] + u * r[p + 2] + v * r[p + 3] + x * r[p + 4];
            green[i] += s * g[p] + t * g[p + 1] + u * g[p + 2] + v * g[p + 3] + x * g[p + 4];
            blue[i] += s * b[p] + t * b[p + 1] + u * b[p + 2] + v * b[p + 3] + x * b[p + 4];
            grey[i] += s * l[p] + t * l[p + 1] + u * l[p + 2] + v * l[p + 3] + x * l[p + 4];
        }
    }
}
