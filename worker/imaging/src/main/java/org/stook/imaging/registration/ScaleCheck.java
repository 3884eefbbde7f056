package org.stook.imaging.registration;

import java.util.Arrays;

/** Looks for frames whose scale breaks the ramp that focus breathing makes. */
final class ScaleCheck {
    /** A ramp below this step cannot be told from none, pixels at the end of the long side. */
    private static final double LEAST_STEP_PX = 0.1;
    /** Share of the steps that must go one way for there to be a ramp. */
    private static final double ONE_WAY = 0.75;

    private final double[] rising;
    private final double usual;
    private final boolean[] inOrder;
    private final boolean ramp;

    /**
     * @param scale logarithms of the frames' scales, in sweep order
     * @param unit full-size pixels from the centre to the end of the long side
     */
    ScaleCheck(double[] scale, double unit) {
        double[] steps = new double[scale.length - 1];
        for (int i = 0; i < steps.length; i++) steps[i] = scale[i + 1] - scale[i];
        double median = ShiftCheck.median(steps);
        long along = Arrays.stream(steps).filter(s -> s * median > 0).count();
        this.ramp = Math.abs(median) * unit >= LEAST_STEP_PX && along >= ONE_WAY * steps.length;
        this.usual = Math.abs(median);
        this.rising = Arrays.stream(scale).map(s -> s * Math.signum(median)).toArray();
        this.inOrder = longestRising(rising);
    }

    /** Whether the frame's scale lies clearly outside those of its neighbours. */
    boolean breaksRamp(int i) {
        return ramp && !inOrder[i] && misplacement(i) >= usual / 2;
    }

    /** The frame after which this one belongs by its scale, -1 for none. */
    int belongsAfter(int i) {
        int rank = -1;
        for (int k = 0; k < rising.length; k++) if (inOrder[k] && rising[k] < rising[i]) rank = k;
        return rank;
    }

    private double misplacement(int i) {
        double before = Double.NEGATIVE_INFINITY;
        double after = Double.POSITIVE_INFINITY;
        for (int k = 0; k < i; k++) if (inOrder[k]) before = rising[k];
        for (int k = rising.length - 1; k > i; k--) if (inOrder[k]) after = rising[k];
        return Math.max(Math.max(0, before - rising[i]), rising[i] - after);
    }

    /** Marks a longest rising subsequence. */
    private static boolean[] longestRising(double[] v) {
        int n = v.length;
        int[] length = new int[n];
        int[] previous = new int[n];
        int best = 0;
        for (int i = 0; i < n; i++) {
            length[i] = 1;
            previous[i] = -1;
            for (int k = 0; k < i; k++) {
                if (v[k] <= v[i] && length[k] + 1 > length[i]) {
                    length[i] = length[k] + 1;
                    previous[i] = k;
                }
            }
            if (length[i] > length[best]) best = i;
        }
        boolean[] marked = new boolean[n];
        for (int i = best; i >= 0; i = previous[i]) marked[i] = true;
        return marked;
    }
}
