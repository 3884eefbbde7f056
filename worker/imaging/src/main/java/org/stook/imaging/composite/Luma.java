package org.stook.imaging.composite;

import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;

/** Encoded grey of a frame: (R + 2 G + B) / 4, in 0 to 1; cheap, and the green that carries most detail counts most. */
final class Luma {
    private Luma() {}

    /** Means of {@code n} x {@code n} pixels; a last column or row that does not fill a cell is left out. */
    static Plane of(Samples samples, int n) {
        Plane plane = new Plane(samples.width() / n, samples.height() / n);
        int[] codes = new int[samples.width() * samples.channels()];
        int[] sums = new int[plane.width()];
        float scale = (float) (1.0 / ((double) samples.maxCode() * (samples.channels() == 3 ? 4 : 1) * n * n));
        boolean wide = (long) samples.maxCode() * 4 * n * n > Integer.MAX_VALUE;
        if (wide) throw new IllegalArgumentException("a reduction by " + n + " is more than is ever asked for");
        for (int y = 0; y < plane.height(); y++) {
            java.util.Arrays.fill(sums, 0);
            for (int i = 0; i < n; i++) {
                samples.row(y * n + i, codes);
                if (samples.channels() == 3) addColour(codes, n, sums);
                else addGrey(codes, n, sums);
            }
            int start = y * plane.width();
            for (int x = 0; x < sums.length; x++) plane.samples()[start + x] = sums[x] * scale;
        }
        return plane;
    }

    /** Means of {@code n} x {@code n} samples of a plane; the plane itself if n is 1. */
    static Plane mean(Plane in, int n) {
        if (n == 1) return in;
        Plane out = new Plane(in.width() / n, in.height() / n);
        float scale = 1f / (n * n);
        for (int y = 0; y < out.height(); y++) {
            for (int x = 0; x < out.width(); x++) {
                float sum = 0;
                for (int j = 0; j < n; j++) for (int i = 0; i < n; i++) sum += in.at(x * n + i, y * n + j);
                out.set(x, y, sum * scale);
            }
        }
        return out;
    }

    private static void addColour(int[] codes, int n, int[] sums) {
        for (int x = 0, i = 0; x < sums.length; x++) {
            int sum = 0;
            for (int k = 0; k < n; k++, i += 3) sum += codes[i] + 2 * codes[i + 1] + codes[i + 2];
            sums[x] += sum;
        }
    }

    private static void addGrey(int[] codes, int n, int[] sums) {
        for (int x = 0, i = 0; x < sums.length; x++) {
            int sum = 0;
            for (int k = 0; k < n; k++) sum += codes[i++];
            sums[x] += sum;
        }
    }
}
