package org.stook.comparison.stack;

/** Kernels that put a frame into place; weights are normalised. */
public enum Interpolation {
    /**
     * Windowed sinc of three lobes (C. E. Duchon, Journal of Applied Meteorology 18 (1979) 1016-1022; as an interpolation
     * kernel common practice): keeps almost all contrast.
     */
    LANCZOS(3) {
        @Override
        double weight(double distance) {
            return sinc(distance) * sinc(distance / 3);
        }
    },

    /**
     * Sinc of eight lobes in a Kaiser window (J. F. Kaiser, R. W. Schafer, IEEE Transactions on Acoustics, Speech and Signal
     * Processing 28(1) (1980) 105-107) of beta 5: within 0.3 % of the contrast up to 0.4 cycles per pixel, so that a frame put
     * into place by it counts as the frame as it was taken. Slow.
     */
    NEARLY_EXACT(8) {
        @Override
        double weight(double distance) {
            double part = distance / 8;
            return sinc(distance) * bessel(5 * Math.sqrt(Math.max(0, 1 - part * part)));
        }
    },

    /** Cubic convolution with a = -0.75, which OpenCV's warps use (R. Keys, same Transactions 29(6) (1981) 1153-1160). */
    CUBIC(2) {
        @Override
        double weight(double distance) {
            double d = Math.abs(distance);
            double a = -0.75;
            return d < 1 ? ((a + 2) * d - (a + 3)) * d * d + 1 : a * (((d - 5) * d + 8) * d - 4);
        }
    };

    /** Steps per pixel of the table. */
    static final int PHASES = 2048;

    private final int lobes;
    private final double[][] weights;

    Interpolation(int lobes) {
        this.lobes = lobes;
        weights = new double[PHASES][2 * lobes];
        for (int p = 0; p < PHASES; p++) {
            double sum = 0;
            for (int i = 0; i < 2 * lobes; i++) {
                weights[p][i] = weight(i - lobes + 1 - p / (double) PHASES);
                sum += weights[p][i];
            }
            for (int i = 0; i < 2 * lobes; i++) weights[p][i] /= sum;
        }
    }

    /** Not normalised; the distance is at most {@link #lobes}. */
    abstract double weight(double distance);

    /** Half of the taps. */
    int lobes() {
        return lobes;
    }

    /** The weights of the taps from {@code 1 - lobes} to {@code lobes} about the pixel left of the point. */
    double[] weights(int phase) {
        return weights[phase];
    }

    private static double sinc(double x) {
        return x == 0 ? 1 : Math.sin(Math.PI * x) / (Math.PI * x);
    }

    /** Modified Bessel function of the first kind, order 0, by its power series. */
    private static double bessel(double x) {
        double sum = 1;
        double term = 1;
        for (int k = 1; k < 30; k++) {
            term *= x * x / (4.0 * k * k);
            sum += term;
        }
        return sum;
    }
}
