package org.stook.imaging.survey;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * How wide each step of a sweep is beside its neighbours. Where a motor made the steps they are so even that a single missing
 * frame stands out; where a hand did, only a step that is wide by any measure is a gap.
 */
final class Evenness {
    /** Neighbours to each side. */
    private static final int BESIDE = 3;
    /** Whole rendered sweeps show up to 1.2, ones that lack a frame 1.3 and more. */
    private static final double LEAST = 1.42;

    private static final double MOST = 1.8;
    /** A sweep whose steps scatter more than so is not even. */
    private static final double UNEVEN = 2;

    private static final double SPREADS = 5;
    /** Standard deviations in a median absolute deviation, for normally distributed values. */
    private static final double NORMAL = 1.4826;

    private Evenness() {}

    /**
     * For each step how many times wider it is than those beside it.
     *
     * @param sure length of each step less its error
     * @param steps length of each step
     * @param changes of sharpness from frame to frame
     */
    static double[] besides(double[] sure, double[] steps, double[] changes) {
        return IntStream.range(0, steps.length)
                .mapToDouble(i -> Math.sqrt(sure[i] / beside(steps, i) * changes[i] / beside(changes, i)))
                .map(wide -> Double.isFinite(wide) ? wide : 0)
                .toArray();
    }

    /** Median, the mean of the middle two where their number is even. */
    private static double beside(double[] values, int at) {
        double[] others = IntStream.rangeClosed(Math.max(0, at - BESIDE), Math.min(values.length - 1, at + BESIDE))
                .filter(i -> i != at)
                .mapToDouble(i -> values[i])
                .sorted()
                .toArray();
        int n = others.length;
        return n == 0 ? Double.NaN : (others[(n - 1) / 2] + others[n / 2]) / 2;
    }

    /** What a step of such a sweep must be wider than, to be a gap; infinite where the steps are not even. */
    static double limit(double[] besides) {
        double[] scatter =
                Arrays.stream(besides).map(wide -> Math.abs(wide - 1)).sorted().toArray();
        double limit = scatter.length < BESIDE ? UNEVEN : 1 + SPREADS * NORMAL * scatter[(scatter.length - 1) / 2];
        return limit >= UNEVEN ? Double.POSITIVE_INFINITY : Math.max(LEAST, Math.min(MOST, limit));
    }
}
