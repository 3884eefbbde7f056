package org.stook.app.sorting;

import java.util.Arrays;
import java.util.List;

/**
 * Tells where a second sweep of the same view begins: focus jumps back to about where the sweep began and goes the same way again.
 * Frames for a gap do neither go as far nor begin there; after a frame that is missing or shaken focus goes on from where it was.
 */
final class Restart {
    private static final int FEWEST = 4;
    /** A jump is at least so many usual steps. */
    private static final double JUMP = 2.5;
    /** A frame of the second sweep is like one of the first within this share of the jump. */
    private static final double NEAR = 0.5;
    /** The second sweep begins within this share of the first, and runs over this share of it. */
    private static final double BEGINNING = 1 / 3.0;

    private static final double SPAN = 0.5;

    private Restart() {}

    /** @return where in these shots of one view a sweep begins anew; their number if nowhere */
    static int in(List<Shot> shots) {
        double[] steps = new double[Math.max(0, shots.size() - 1)];
        for (int i = 0; i < steps.length; i++) steps[i] = distance(shots.get(i), shots.get(i + 1));
        double usual = median(steps);
        for (int i = FEWEST; i + FEWEST <= shots.size(); i++) {
            if (steps[i - 1] > JUMP * usual
                    && repeats(shots.subList(0, i), shots.subList(i, shots.size()), steps[i - 1])) {
                return i;
            }
        }
        return shots.size();
    }

    /** Whether {@code later} is the sweep once more. */
    static boolean is(List<Shot> sweep, List<Shot> later) {
        if (sweep.size() < FEWEST || later.size() < FEWEST) {
            return false;
        }
        Shot last = sweep.get(sweep.size() - 1);
        double[] steps = new double[sweep.size() - 1];
        for (int i = 0; i < steps.length; i++) steps[i] = distance(sweep.get(i), sweep.get(i + 1));
        double jump = distance(last, later.get(0));
        return jump > JUMP * median(steps) && repeats(sweep, later, jump);
    }

    private static boolean repeats(List<Shot> sweep, List<Shot> later, double jump) {
        int first = nearest(sweep, later.get(0), NEAR * jump);
        if (first < 0 || first > BEGINNING * (sweep.size() - 1)) {
            return false;
        }
        int reached = first;
        for (Shot shot : later) {
            int at = nearest(sweep, shot, NEAR * jump);
            // One step back is within the error where steps are small.
            if (at >= 0 && at < reached - 1) break;
            reached = Math.max(reached, at);
        }
        return reached - first >= SPAN * (sweep.size() - 1);
    }

    /** Which of the sweep is most like it, -1 if none is. */
    private static int nearest(List<Shot> sweep, Shot shot, double within) {
        int best = -1;
        double least = within;
        for (int i = 0; i < sweep.size(); i++) {
            double distance = distance(sweep.get(i), shot);
            if (distance < least) {
                least = distance;
                best = i;
            }
        }
        return best;
    }

    /** Mean difference of sharpness over the tiles; 0 where nothing is known. */
    private static double distance(Shot a, Shot b) {
        float[] p = a.sight().sharpness();
        float[] q = b.sight().sharpness();
        if (p.length == 0 || p.length != q.length) {
            return 0;
        }
        double sum = 0;
        for (int i = 0; i < p.length; i++) sum += Math.abs(p[i] - q[i]);
        return sum / p.length;
    }

    private static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted.length == 0 ? 0 : sorted[sorted.length / 2];
    }
}
