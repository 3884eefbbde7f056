package org.stook.imaging.placing;

import java.util.Arrays;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/**
 * The vertical taps. Along a row of the area the frame's row changes slowly. So the row is cut into blocks within which
 * that change is small and no tap changes its row; there each weight is a parabola through its values at both ends and in
 * the middle. The loop then has no table in it, and the compiler makes vector code of it. It does so only where all lines
 * share one index; hence the line of positions within blocks, and the line that is copied out when done.
 */
final class DownColumns {
    private static final int LONGEST = 1024;
    /** Change of the fraction over a block; the error of weights taken as parabolas stays below 1e-4. */
    private static final double FRACTION = 1.0 / 8;

    /** Terms of a parabola. */
    private static final int TERMS = 3;
    /** Taps added in one loop; with more it is too long for the compiler to make vector code of. */
    private static final int AT_ONCE = 2;

    private final Area area;
    private final Placement placement;
    private final float[] within;
    private final float[] line;
    private final int[] ends;
    private final int[] rows;
    private final float[][] weights;
    private int blocks;

    DownColumns(Area area, Placement placement) {
        this.area = area;
        this.placement = placement;
        this.within = new float[area.width()];
        this.line = new float[area.width()];
        this.ends = new int[area.width()];
        this.rows = new int[area.width()];
        this.weights = new float[area.width()][];
    }

    /** Works out the weights for a row of the area. */
    void prepare(int row) {
        double y = area.y() + row;
        double perPixel = Math.abs(v(area.width() - 1, y) - v(0, y)) / area.width();
        int longest = perPixel * LONGEST <= FRACTION ? LONGEST : Math.max(1, (int) (FRACTION / perPixel));
        blocks = 0;
        for (int from = 0; from < area.width(); from = ends[blocks++]) {
            int to = endOfRow(from, Math.min(area.width(), from + longest), y);
            block(from, to, y);
        }
    }

    private double v(int x, double y) {
        return placement.y(area.x() + x, y);
    }

    /** The first column after {@code from}, up to {@code to}, at which the point moves into another row of the frame. */
    private int endOfRow(int from, int to, double y) {
        int row = (int) v(from, y);
        if ((int) v(to - 1, y) == row) return to;
        int same = from;
        int other = to - 1;
        while (other - same > 1) {
            int middle = (same + other) / 2;
            if ((int) v(middle, y) == row) same = middle;
            else other = middle;
        }
        return other;
    }

    private void block(int from, int to, double y) {
        double first = v(from, y);
        double last = v(to - 1, y);
        int row = (int) first;
        ends[blocks] = to;
        rows[blocks] = row + Kernel.FIRST;
        if (weights[blocks] == null) weights[blocks] = new float[TERMS * Kernel.TAPS];
        parabolas(Kernel.offset(first - row), Kernel.offset((first + last) / 2 - row), Kernel.offset(last - row));
        float step = to - from > 1 ? 1f / (to - from - 1) : 0;
        for (int x = from; x < to; x++) within[x] = (x - from) * step;
    }

    /** Through the weights at 0, 1/2 and 1 of the block. */
    private void parabolas(int first, int middle, int last) {
        float[] w = Kernel.weights();
        float[] out = weights[blocks];
        for (int k = 0; k < Kernel.TAPS; k++) {
            float a = w[first + k];
            float b = w[middle + k];
            float c = w[last + k];
            out[k] = a;
            out[Kernel.TAPS + k] = 4 * b - 3 * a - c;
            out[2 * Kernel.TAPS + k] = 2 * (a + c) - 4 * b;
        }
    }

    /** Draws a channel of the prepared row. */
    void draw(Strip strip, int channel, float[] out) {
        int from = 0;
        for (int b = 0; b < blocks; b++) {
            for (int tap = 0; tap < Kernel.TAPS; tap += AT_ONCE) {
                float[] p = strip.row(channel, rows[b] + tap);
                float[] q = strip.row(channel, rows[b] + tap + 1);
                if (tap == 0) Arrays.fill(line, from, ends[b], 0);
                add(p, q, weights[b], tap, from, ends[b]);
            }
            from = ends[b];
        }
        System.arraycopy(line, 0, out, 0, line.length);
    }

    private void add(float[] p, float[] q, float[] w, int tap, int from, int to) {
        float p0 = w[tap], q0 = w[tap + 1];
        float p1 = w[tap + Kernel.TAPS], q1 = w[tap + 1 + Kernel.TAPS];
        float p2 = w[tap + 2 * Kernel.TAPS], q2 = w[tap + 1 + 2 * Kernel.TAPS];
        float[] at = within;
        float[] out = line;
        for (int x = from; x < to; x++) {
            float i = at[x];
            out[x] += (p0 + (p1 + p2 * i) * i) * p[x] + (q0 + (q1 + q2 * i) * i) * q[x];
        }
    }
}
