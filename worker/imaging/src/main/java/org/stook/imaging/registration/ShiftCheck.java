package org.stook.imaging.registration;

import java.util.Arrays;

/**
 * Looks for bumps and steps in the path of the frames' centres. Even a firm stand makes every frame tremble a little;
 * what counts is a shift far beyond the sweep's own tremble.
 */
final class ShiftCheck {
    /** A shift that is never remarked on, share of the half long side: 1.5 pixels on a frame 1500 wide. */
    private static final double FIRM = 0.002;
    /** A single frame this many usual distances off its neighbours was bumped. */
    private static final double BUMP = 3.3;
    /** A step between the frames before and after, in usual distances. */
    private static final double STEP = 4;
    /** How many frames to each side tell where a frame should lie. */
    private static final int SIDE = 4;
    /** Fewer frames on a side cannot tell a step from a bump. */
    private static final int FEWEST = 3;

    private final double[] x;
    private final double[] y;

    /**
     * @param x of the frames' centres, normal units, in sweep order
     * @param y likewise
     */
    ShiftCheck(double[] x, double[] y) {
        this.x = levelled(x);
        this.y = levelled(y);
    }

    /** For each frame how far it lies off its neighbours if that is remarkable, else 0; steps are taken out before. */
    double[] bumps() {
        double[] off = distances();
        double limit = Math.max(FIRM, BUMP * median(off));
        return Arrays.stream(off).map(d -> d > limit ? d : 0).toArray();
    }

    /**
     * For each frame how far everything moved between the frame before and it, 0 where nothing did. Takes the steps out of
     * the path.
     */
    double[] steps() {
        int n = x.length;
        double[] steps = new double[n];
        for (int round = 0; round < 3; round++) {
            int at = largestStep();
            double size = at == 0 ? 0 : step(at);
            if (size <= Math.max(FIRM, STEP * median(distances()))) break;
            steps[at] += size;
            double dx = stepIn(x, at);
            double dy = stepIn(y, at);
            for (int f = at; f < n; f++) {
                x[f] -= dx;
                y[f] -= dy;
            }
        }
        return steps;
    }

    /** The frame before which the path steps farthest, 0 for none. */
    private int largestStep() {
        int best = 0;
        for (int f = FEWEST; f <= x.length - FEWEST; f++) if (best == 0 || step(f) > step(best)) best = f;
        return best;
    }

    private double step(int f) {
        return Math.hypot(stepIn(x, f), stepIn(y, f));
    }

    private static double stepIn(double[] v, int f) {
        double before = median(Arrays.copyOfRange(v, Math.max(0, f - SIDE), f));
        double after = median(Arrays.copyOfRange(v, f, Math.min(v.length, f + SIDE)));
        return after - before;
    }

    private double[] distances() {
        double[] off = new double[x.length];
        for (int f = 0; f < off.length; f++) {
            off[f] = Math.hypot(x[f] - median(around(x, f)), y[f] - median(around(y, f)));
        }
        return off;
    }

    private static double[] around(double[] v, int f) {
        int from = Math.max(0, f - SIDE);
        int to = Math.min(v.length, f + SIDE + 1);
        double[] others = new double[to - from - 1];
        for (int i = from, k = 0; i < to; i++) if (i != f) others[k++] = v[i];
        return others;
    }

    /** Takes the usual drift off, as when the lens breathes about another point than the centre. */
    private static double[] levelled(double[] v) {
        double[] steps = new double[v.length - 1];
        for (int i = 0; i < steps.length; i++) steps[i] = v[i + 1] - v[i];
        double drift = median(steps);
        double[] level = new double[v.length];
        for (int i = 0; i < v.length; i++) level[i] = v[i] - i * drift;
        return level;
    }

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        int half = sorted.length / 2;
        return sorted.length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }
}
