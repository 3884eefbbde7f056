package org.stook.scenes.optics;

import java.util.SplittableRandom;

/** Normally distributed numbers from a table of quantiles: quick, and the same on every machine. Ends at +-4.3. */
final class Normal {
    private static final int BITS = 16;
    private static final float[] QUANTILES = new float[1 << BITS];

    static {
        // Steps along the distribution function, by Simpson's rule from the middle outwards; the quantile is read off
        // within a step.
        int half = QUANTILES.length / 2;
        double x = 0;
        double area = 0;
        double h = 1e-4;
        for (int i = 0; i < half; i++) {
            double wanted = (i + 0.5) / QUANTILES.length;
            double gained = slice(x, h);
            while (area + gained < wanted) {
                area += gained;
                x += h;
                gained = slice(x, h);
            }
            double quantile = x + h * (wanted - area) / gained;
            QUANTILES[half + i] = (float) quantile;
            QUANTILES[half - 1 - i] = (float) -quantile;
        }
    }

    private final SplittableRandom random;
    private long bits;
    private int left;

    Normal(long number) {
        random = new SplittableRandom(number);
    }

    double next() {
        if (left == 0) {
            bits = random.nextLong();
            left = 64 / BITS;
        }
        double value = QUANTILES[(int) (bits & (QUANTILES.length - 1))];
        bits >>>= BITS;
        left--;
        return value;
    }

    private static double slice(double x, double h) {
        return h / 6 * (density(x) + 4 * density(x + h / 2) + density(x + h));
    }

    private static double density(double x) {
        return StrictMath.exp(-x * x / 2) / StrictMath.sqrt(2 * Math.PI);
    }
}
