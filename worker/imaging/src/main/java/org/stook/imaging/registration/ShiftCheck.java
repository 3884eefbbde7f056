package org.stook.imaging.registration;

import java.util.Arrays;

/**
 * Looks for bumps and steps in the path of the frames' centres. Even a firm stand makes every frame tremble a little;
 * what counts is a shift far beyond the sweep's own tremble.
 */
final class ShiftCheck {
    /** A shift that is never remarked on, share of the half long side: 1.5 pixels on a frame 1500 wide. */
    private static final double FIRM = 0.002;
    /** Of n frames that tremble the farthest is about this times the root of ln n usual distances off (Rayleigh's law). */
    private static final double FARTHEST = 1.85;
    /** In few frames the usual distance is itself uncertain. */
    private static final double FEW = 5;
    /** How much farther frames lie off those beside them than off those around, as to the usual distance. */
    private static final double BESIDE = 0.75;
    /** A bump reaches into the two frames beside it, so that in fewer frames it would be usual. */
    private static final int FEWEST_BESIDE = 7;
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

    /**
     * For each frame how far it lies off its neighbours if that is remarkable, else 0; steps are taken out before. It has to
     * be remarkable against the frames around as well as against the two beside it, for frames that wander are far from the
     * ones around, and frames that tremble from the ones beside.
     */
    double[] bumps() {
        double[] around = distances();
        double[] beside = bends();
        double times = FARTHEST * Math.sqrt(Math.log(x.length)) + FEW / x.length;
        double farAround = Math.max(FIRM, times * median(around));
        double farBeside = x.length < FEWEST_BESIDE ? 0 : Math.max(FIRM, BESIDE * times * median(beside));
        double[] bumps = new double[x.length];
        for (int f = 0; f < bumps.length; f++) {
            if (around[f] > farAround && beside[f] > farBeside) bumps[f] = around[f];
        }
        return bumps;
    }

    /**
     * For each frame how far everything moved between the frame before and it, 0 where nothing did. Takes the steps out of
     * the path.
     */
    double[] steps() {
        int n = x.length;
        double[] steps = new double[n];
        for (int round = 0; round < 3; round++) {
            double[] jumps = jumps();
            int at = largestStep(jumps);
            double limit = Math.max(FIRM, STEP * Math.max(median(distances()), median(jumps)));
            if (at == 0 || sudden(at, jumps) <= limit) break;
            steps[at] += step(at);
            double dx = stepIn(x, at);
            double dy = stepIn(y, at);
            for (int f = at; f < n; f++) {
                x[f] -= dx;
                y[f] -= dy;
            }
        }
        return steps;
    }

    /** The frame before which the path steps farthest at once, 0 for none. */
    private int largestStep(double[] jumps) {
        int best = 0;
        for (int f = FEWEST; f <= x.length - FEWEST; f++) {
            if (best == 0 || sudden(f, jumps) > sudden(best, jumps)) best = f;
        }
        return best;
    }

    /** How far the path steps, but no farther than from one frame to the next: wanderers get far in many small jumps. */
    private double sudden(int f, double[] jumps) {
        return Math.min(step(f), jumps[f - 1]);
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

    /** How far each frame lies off the middle of the two beside it, or of the one beside it at an end. */
    private double[] bends() {
        double[] bends = new double[x.length];
        for (int f = 0; f < bends.length; f++) bends[f] = Math.hypot(bend(x, f), bend(y, f));
        return bends;
    }

    private static double bend(double[] v, int f) {
        int last = v.length - 1;
        if (f == 0) return v[0] - v[1];
        if (f == last) return v[last] - v[last - 1];
        return v[f] - (v[f - 1] + v[f + 1]) / 2;
    }

    private double[] jumps() {
        double[] jumps = new double[x.length - 1];
        for (int f = 0; f < jumps.length; f++) jumps[f] = Math.hypot(x[f + 1] - x[f], y[f + 1] - y[f]);
        return jumps;
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
