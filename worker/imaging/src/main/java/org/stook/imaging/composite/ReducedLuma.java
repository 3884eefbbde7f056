package org.stook.imaging.composite;

import org.stook.imaging.frame.Plane;

/**
 * Luminance of a frame reduced by a whole factor, added up as its rows come by: means of {@code n x n} pixels; a last column
 * or row that does not fill a cell is left out. One thread.
 */
final class ReducedLuma {
    private final int n;
    private final Plane plane;

    ReducedLuma(int width, int height, int n) {
        this.n = n;
        this.plane = new Plane(width / n, height / n);
    }

    /** Takes row {@code y} of the frame. */
    void add(int y, float[] luma) {
        if (y / n >= plane.height()) return;
        float[] out = plane.samples();
        int at = y / n * plane.width();
        float scale = 1f / (n * n);
        for (int x = 0, i = 0; x < plane.width(); x++) {
            float sum = luma[i++];
            for (int k = 1; k < n; k++) sum += luma[i++];
            out[at + x] += sum * scale;
        }
    }

    Plane plane() {
        return plane;
    }

    /** Means of {@code n} x {@code n} samples of a plane; the plane itself if n is 1. */
    static Plane mean(Plane in, int n) {
        if (n == 1) return in;
        ReducedLuma reduced = new ReducedLuma(in.width(), in.height(), n);
        float[] row = new float[in.width()];
        for (int y = 0; y < in.height(); y++) {
            System.arraycopy(in.samples(), y * row.length, row, 0, row.length);
            reduced.add(y, row);
        }
        return reduced.plane();
    }
}
