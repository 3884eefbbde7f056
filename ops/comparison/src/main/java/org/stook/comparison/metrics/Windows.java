package org.stook.comparison.metrics;

/**
 * Weighted means of an image under a separable window, only where the whole window fits: the output is smaller than the
 * input by the window's length less one in each direction.
 */
record Windows(int width, int height, double[] taps) {
    static Windows gaussian(int width, int height, int length, double sigma) {
        double[] taps = new double[length];
        double sum = 0;
        for (int i = 0; i < length; i++) {
            double d = i - (length - 1) / 2.0;
            taps[i] = Math.exp(-d * d / (2 * sigma * sigma));
            sum += taps[i];
        }
        for (int i = 0; i < length; i++) taps[i] /= sum;
        return new Windows(width, height, taps);
    }

    static Windows uniform(int width, int height, int length) {
        double[] taps = new double[length];
        java.util.Arrays.fill(taps, 1.0 / length);
        return new Windows(width, height, taps);
    }

    Windows {
        if (width < taps.length || height < taps.length) {
            throw new IllegalArgumentException("an image of %d x %d is smaller than the %d x %d window"
                    .formatted(width, height, taps.length, taps.length));
        }
    }

    double[] mean(double[] in) {
        int w = width - taps.length + 1;
        int h = height - taps.length + 1;
        double[] rows = new double[w * height];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                for (int k = 0; k < taps.length; k++) sum += taps[k] * in[y * width + x + k];
                rows[y * w + x] = sum;
            }
        }
        double[] out = new double[w * h];
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                for (int k = 0; k < taps.length; k++) sum += taps[k] * rows[(y + k) * w + x];
                out[y * w + x] = sum;
            }
        }
        return out;
    }

    double[] meanOfProduct(double[] a, double[] b) {
        double[] product = new double[a.length];
        for (int i = 0; i < product.length; i++) product[i] = a[i] * b[i];
        return mean(product);
    }
}
