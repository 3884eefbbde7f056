package org.stook.imaging.survey;

import java.util.Arrays;
import org.ejml.simple.SimpleMatrix;

/**
 * A value that changes evenly across a picture, found from places of which some show something else: least squares with the
 * biweight of Beaton and Tukey 1974 (The fitting of power series, meaning polynomials, illustrated on band-spectroscopic data),
 * begun from the median.
 *
 * @param level in the middle of the picture
 * @param across change from the left to the right border
 * @param down change from the upper to the lower border
 * @param spread standard deviation of what follows the trend
 */
record SmoothTrend(double level, double across, double down, double spread) {
    private static final int ROUNDS = 15;
    /** Standard deviations from which on a value has no say. */
    private static final double REACH = 3;
    /** Standard deviations in a median absolute deviation, for normally distributed values. */
    private static final double NORMAL = 1.4826;
    /** Logarithms of level and sharpness are not known better than this. */
    private static final double FINEST = 0.03;

    /**
     * @param x of each value, -0.5 to 0.5 of the width
     * @param y likewise down
     */
    static SmoothTrend of(double[] x, double[] y, double[] values) {
        SmoothTrend trend = new SmoothTrend(Seriation.median(values), 0, 0, 0);
        for (int round = 0; round < ROUNDS; round++) {
            double[] off = new double[values.length];
            for (int i = 0; i < off.length; i++) off[i] = Math.abs(values[i] - trend.at(x[i], y[i]));
            double spread = Math.max(FINEST, NORMAL * Seriation.median(off));
            double[] weights =
                    Arrays.stream(off).map(o -> biweight(o / (REACH * spread))).toArray();
            trend = fitted(x, y, values, weights, spread);
        }
        return trend;
    }

    double at(double x, double y) {
        return level + across * x + down * y;
    }

    /** How many standard deviations a value lies off. */
    double deviation(double x, double y, double value) {
        return (value - at(x, y)) / spread;
    }

    private static double biweight(double u) {
        return u < 1 ? (1 - u * u) * (1 - u * u) : 0;
    }

    private static SmoothTrend fitted(double[] x, double[] y, double[] values, double[] weights, double spread) {
        SimpleMatrix normal = SimpleMatrix.diag(1e-6, 1e-6, 1e-6);
        SimpleMatrix right = new SimpleMatrix(3, 1);
        for (int i = 0; i < values.length; i++) {
            SimpleMatrix row = new SimpleMatrix(3, 1, true, new double[] {1, x[i], y[i]});
            normal = normal.plus(row.mult(row.transpose()).scale(weights[i]));
            right = right.plus(row.scale(weights[i] * values[i]));
        }
        SimpleMatrix found = normal.solve(right);
        return new SmoothTrend(found.get(0), found.get(1), found.get(2), spread);
    }
}
