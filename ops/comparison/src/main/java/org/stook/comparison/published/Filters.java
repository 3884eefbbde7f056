package org.stook.comparison.published;

/** Plain filters on row-major images. */
final class Filters {
    private Filters() {}

    /** The same odd number of taps along rows, then columns; the border pixel is repeated outside. */
    static double[] separable(double[] in, int w, int h, double[] taps) {
        int reach = taps.length / 2;
        double[] rows = new double[in.length];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                for (int k = -reach; k <= reach; k++) {
                    sum += taps[k + reach] * in[y * w + Math.min(w - 1, Math.max(0, x + k))];
                }
                rows[y * w + x] = sum;
            }
        }
        double[] out = new double[in.length];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                for (int k = -reach; k <= reach; k++) {
                    sum += taps[k + reach] * rows[Math.min(h - 1, Math.max(0, y + k)) * w + x];
                }
                out[y * w + x] = sum;
            }
        }
        return out;
    }

    /** Mean over the square of {@code 2 radius + 1} pixels, as much of it as lies inside. */
    static double[] boxMean(double[] in, int w, int h, int radius) {
        double[] sums = new double[(w + 1) * (h + 1)];
        for (int y = 0; y < h; y++) {
            double row = 0;
            for (int x = 0; x < w; x++) {
                row += in[y * w + x];
                sums[(y + 1) * (w + 1) + x + 1] = sums[y * (w + 1) + x + 1] + row;
            }
        }
        double[] out = new double[in.length];
        for (int y = 0; y < h; y++) {
            int top = Math.max(0, y - radius) * (w + 1);
            int bottom = Math.min(h, y + radius + 1) * (w + 1);
            for (int x = 0; x < w; x++) {
                int left = Math.max(0, x - radius);
                int right = Math.min(w, x + radius + 1);
                double sum = sums[bottom + right] - sums[bottom + left] - sums[top + right] + sums[top + left];
                out[y * w + x] = sum / ((right - left) * (double) ((bottom - top) / (w + 1)));
            }
        }
        return out;
    }
}
