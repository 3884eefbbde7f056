package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * The generating kernel of the pyramids, (1 4 6 4 1) / 16 in both directions, after P. J. Burt and E. H. Adelson, "The
 * Laplacian Pyramid as a Compact Image Code", IEEE Transactions on Communications 31(4), 1983. Borders are mirrored
 * about the outermost pixel when reducing and smoothing, repeated when expanding.
 */
final class Binomial {
    private Binomial() {}

    /** Half of an extent, rounded up. */
    static int half(int extent) {
        return (extent + 1) / 2;
    }

    /** Index {@code i} folded back into {@code 0 .. n - 1}, mirrored about the outermost samples. */
    static int mirror(int i, int n) {
        if (n == 1) return 0;
        int j = i;
        while (j < 0 || j >= n) j = j < 0 ? -j : 2 * (n - 1) - j;
        return j;
    }

    /** Every second pixel of the smoothed image, on all threads. */
    static Plane reduce(Plane fine, Plane coarse, Rows rows) {
        rows.runWith(coarse.height(), () -> {
            float[] line = new float[fine.width()];
            return (from, to) -> {
                for (int y = from; y < to; y++) reduceRow(fine, coarse, y, line);
            };
        });
        return coarse;
    }

    private static void reduceRow(Plane fine, Plane coarse, int y, float[] line) {
        int w = fine.width();
        column(fine.samples(), w, fine.height(), 2 * y, line);
        halve(line, w, coarse.samples(), y * coarse.width());
    }

    /** The horizontal kernel at every second sample of a line of {@code w}. */
    static void halve(float[] line, int w, float[] out, int offset) {
        int n = half(w);
        int safe = Math.max(1, (w - 1) / 2);
        out[offset] = tap(line, w, 0);
        for (int x = 1; x < safe; x++) {
            int c = 2 * x;
            out[offset + x] = (line[c - 2] + line[c + 2] + 4 * (line[c - 1] + line[c + 1]) + 6 * line[c]) * (1 / 16f);
        }
        for (int x = safe; x < n; x++) out[offset + x] = tap(line, w, 2 * x);
    }

    /** The vertical kernel around row {@code y} of an image of {@code h} rows of {@code w}. */
    static void column(float[] in, int w, int h, int y, float[] line) {
        int a = mirror(y - 2, h) * w;
        int b = mirror(y - 1, h) * w;
        int c = mirror(y, h) * w;
        int d = mirror(y + 1, h) * w;
        int e = mirror(y + 2, h) * w;
        for (int x = 0; x < w; x++) {
            line[x] = (in[a + x] + in[e + x] + 4 * (in[b + x] + in[d + x]) + 6 * in[c + x]) * (1 / 16f);
        }
    }

    /** The horizontal kernel on one line of {@code w}. */
    static void across(float[] line, int w, float[] out, int offset) {
        for (int x = 0; x < Math.min(2, w); x++) out[offset + x] = tap(line, w, x);
        for (int x = 2; x < w - 2; x++) {
            out[offset + x] = (line[x - 2] + line[x + 2] + 4 * (line[x - 1] + line[x + 1]) + 6 * line[x]) * (1 / 16f);
        }
        for (int x = Math.max(2, w - 2); x < w; x++) out[offset + x] = tap(line, w, x);
    }

    private static float tap(float[] line, int w, int x) {
        float far = line[mirror(x - 2, w)] + line[mirror(x + 2, w)];
        float near = line[mirror(x - 1, w)] + line[mirror(x + 1, w)];
        return (far + 4 * near + 6 * line[x]) * (1 / 16f);
    }

    /** Row {@code y} of {@code coarse} expanded to twice as many columns; {@code line} holds a coarse row. */
    static void expandRow(Plane coarse, int y, float[] line, float[] out) {
        expandDown(coarse, y, line);
        widen(line, coarse.width(), out);
    }

    /** Row {@code y} of {@code coarse} expanded to twice as many rows. */
    static void expandDown(Plane coarse, int y, float[] line) {
        int n = coarse.width();
        float[] in = coarse.samples();
        int j = y / 2;
        int below = Math.min(j + 1, coarse.height() - 1) * n;
        if (y % 2 == 0) {
            int above = Math.max(j - 1, 0) * n;
            for (int x = 0; x < n; x++) line[x] = (in[above + x] + in[below + x] + 6 * in[j * n + x]) * 0.125f;
        } else {
            for (int x = 0; x < n; x++) line[x] = (in[j * n + x] + in[below + x]) * 0.5f;
        }
    }

    /** A line of {@code n} expanded to {@code 2 n}, or one less. */
    static void widen(float[] line, int n, float[] out) {
        float left = line[0];
        float here = line[0];
        for (int x = 0; x < n - 1; x++) {
            float right = line[x + 1];
            out[2 * x] = (left + right + 6 * here) * 0.125f;
            out[2 * x + 1] = (here + right) * 0.5f;
            left = here;
            here = right;
        }
        out[2 * n - 2] = (left + 7 * here) * 0.125f;
        if (2 * n - 1 < out.length) out[2 * n - 1] = here;
    }

    /** Adds the expanded {@code coarse} to {@code fine}, on all threads. */
    static void addExpanded(Plane coarse, Plane fine, Rows rows) {
        int w = fine.width();
        rows.runWith(fine.height(), () -> {
            float[] line = new float[coarse.width()];
            float[] wide = new float[w + 1];
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    expandRow(coarse, y, line, wide);
                    add(wide, fine.samples(), y * w, w);
                }
            };
        });
    }

    private static void add(float[] wide, float[] out, int at, int w) {
        for (int x = 0; x < w; x++) out[at + x] += wide[x];
    }
}
