package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * Halves a plane that never exists as a whole: takes its rows from above to below and keeps the last five, which is what
 * a row of half size is made of. One thread.
 */
final class HalvingRows {
    private static final int TAPS = 5;

    private final int height;
    private final float[][] ring;
    private final float[] line;
    private int next;
    private int last;

    HalvingRows(int width, int height) {
        this.height = height;
        this.ring = new float[TAPS][width];
        this.line = new float[width];
    }

    /** Makes ready for rows {@code from .. to - 1} of half size. @return the first full-size row to be put */
    int begin(int from, int to) {
        next = from;
        last = to;
        return Math.max(0, 2 * from - 2);
    }

    /** The full-size row, exclusive, up to which rows are to be put. */
    int end() {
        return Math.min(height, 2 * last + 1);
    }

    /** The line to be filled with full-size row {@code y}. */
    float[] slot(int y) {
        return ring[y % TAPS];
    }

    /** Whether, once row {@code y} is filled, the next row of half size can be made. */
    boolean ready(int y) {
        return next < last && Math.min(2 * next + 2, height - 1) <= y;
    }

    /** Makes the next row of half size. @return which it is */
    int take(float[] out, int offset) {
        int y = 2 * next;
        float[] a = slot(Binomial.mirror(y - 2, height));
        float[] b = slot(Binomial.mirror(y - 1, height));
        float[] c = slot(y);
        float[] d = slot(Binomial.mirror(y + 1, height));
        float[] e = slot(Binomial.mirror(y + 2, height));
        for (int x = 0; x < line.length; x++) line[x] = (a[x] + e[x] + 4 * (b[x] + d[x]) + 6 * c[x]) * (1 / 16f);
        Binomial.halve(line, line.length, out, offset);
        return next++;
    }

    /** Makes the next row of half size in its place in a plane. */
    void take(Plane half) {
        take(half.samples(), next * half.width());
    }
}
