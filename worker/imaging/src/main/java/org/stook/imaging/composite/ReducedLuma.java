package org.stook.imaging.composite;

import java.util.Arrays;
import org.stook.imaging.blend.LumaRows;
import org.stook.imaging.frame.Plane;

/**
 * Luminance of a frame reduced by a whole factor, added up as its rows come by: means of {@code n x n} pixels; a last column
 * or row that does not fill a cell is left out. One thread.
 */
final class ReducedLuma {
    private final int n;
    private final Plane plane;
    private final float[] evens;
    private final float[] odds;

    /** @param n 1 or even */
    ReducedLuma(int width, int height, int n) {
        this.n = n;
        this.plane = new Plane(width / n, height / n);
        this.evens = new float[width / n * n / 2 + 1];
        this.odds = new float[evens.length];
    }

    /** Takes row {@code y} of the frame, taken apart as {@link LumaRows} has it. */
    void add(int y, float[] even, float[] odd) {
        if (y / n >= plane.height()) return;
        float[] out = plane.samples();
        int at = y / n * plane.width();
        if (n == 1) {
            for (int x = 0; x < plane.width(); x++) out[at + x] = (x % 2 == 0 ? even : odd)[x / 2 + 1];
            return;
        }
        // Whole lines first, in vector code; across only once for n of them.
        if (y % n == 0) {
            Arrays.fill(evens, 0);
            Arrays.fill(odds, 0);
        }
        addTo(evens, even);
        addTo(odds, odd);
        if (y % n == n - 1) across(out, at);
    }

    private static void addTo(float[] sums, float[] line) {
        for (int x = 0; x < sums.length; x++) sums[x] += line[x];
    }

    private void across(float[] out, int at) {
        float scale = 1f / (n * n);
        for (int x = 0, i = 1; x < plane.width(); x++) {
            float sum = 0;
            for (int k = 0; k < n; k += 2, i++) sum += evens[i] + odds[i];
            out[at + x] = sum * scale;
        }
    }

    Plane plane() {
        return plane;
    }

    /** Means of {@code n} x {@code n} samples of a plane; the plane itself if n is 1. */
    static Plane mean(Plane in, int n) {
        if (n == 1) return in;
        ReducedLuma reduced = new ReducedLuma(in.width(), in.height(), n);
        float[] even = new float[in.width() / 2 + 2];
        float[] odd = new float[even.length];
        for (int y = 0; y < in.height(); y++) {
            for (int x = 0, i = y * in.width(); x < in.width(); x++, i++) {
                (x % 2 == 0 ? even : odd)[x / 2 + 1] = in.samples()[i];
            }
            reduced.add(y, even, odd);
        }
        return reduced.plane();
    }
}
