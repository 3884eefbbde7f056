package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Puts frames in focus order: the shortest path that visits them all (seriation as a path problem: Hahsler, Hornik and
 * Buchta 2008, Getting things in order). Focus distances add up along a sweep, so that the shortest path is the sweep.
 *
 * <p>The search starts from the capture order and leaves it only for a clear gain; capture also gives the direction, which
 * sharpness cannot.
 */
final class Seriation {
    /** A gain below this share of the usual step is chance. */
    private static final double CLEAR = 0.1;

    private Seriation() {}

    /** Indices into the distances, in order. */
    static int[] order(FocusDistances d) {
        int n = d.size();
        int[] captured = new int[n];
        for (int i = 0; i < n; i++) captured[i] = i;
        if (n < 3) return captured;
        double usual = median(steps(d, inserted(d)));
        double clear = CLEAR * usual;
        int[] fromCapture = improved(d, captured, clear);
        int[] fromScratch = improved(d, inserted(d), clear);
        boolean scratch = length(d, fromScratch) < length(d, fromCapture) - clear;
        int[] best = scratch ? fromScratch : fromCapture;
        return rises(best) ? best : reversed(best, 0, best.length - 1);
    }

    private static double[] steps(FocusDistances d, int[] order) {
        double[] steps = new double[Math.max(0, order.length - 1)];
        for (int i = 0; i < steps.length; i++) steps[i] = d.at(order[i], order[i + 1]);
        return steps;
    }

    /** The fewest frames that explain how an order differs from rising indices: both of a swapped pair, or those moved. */
    static List<Integer> misplaced(int[] order) {
        int[] rising = order.clone();
        Arrays.sort(rising);
        List<Integer> differing = new ArrayList<>();
        for (int i = 0; i < order.length; i++) if (rising[i] != order[i]) differing.add(rising[i]);
        boolean[] runs = longestRising(order);
        List<Integer> moved = new ArrayList<>();
        for (int i = 0; i < order.length; i++) if (!runs[i]) moved.add(order[i]);
        List<Integer> fewest = differing.size() <= 2 * moved.size() ? differing : moved;
        return fewest.stream().sorted().toList();
    }

    private static double length(FocusDistances d, int[] path) {
        double sum = 0;
        for (int i = 0; i + 1 < path.length; i++) sum += d.at(path[i], path[i + 1]);
        return sum;
    }

    /** Builds a path by cheapest insertion from the two frames farthest apart. */
    private static int[] inserted(FocusDistances d) {
        List<Integer> path = new ArrayList<>(farthest(d));
        boolean[] used = new boolean[d.size()];
        path.forEach(i -> used[i] = true);
        while (path.size() < d.size()) {
            int frame = -1;
            int at = 0;
            double cheapest = Double.POSITIVE_INFINITY;
            for (int f = 0; f < d.size(); f++) {
                if (used[f]) continue;
                for (int p = 0; p <= path.size(); p++) {
                    double cost = insertionCost(d, path, f, p);
                    if (cost < cheapest) {
                        cheapest = cost;
                        frame = f;
                        at = p;
                    }
                }
            }
            path.add(at, frame);
            used[frame] = true;
        }
        return path.stream().mapToInt(Integer::intValue).toArray();
    }

    private static double insertionCost(FocusDistances d, List<Integer> path, int f, int p) {
        double cost = 0;
        if (p > 0) cost += d.at(path.get(p - 1), f);
        if (p < path.size()) cost += d.at(f, path.get(p));
        if (p > 0 && p < path.size()) cost -= d.at(path.get(p - 1), path.get(p));
        return cost;
    }

    private static List<Integer> farthest(FocusDistances d) {
        int a = 0;
        int b = Math.min(1, d.size() - 1);
        for (int i = 0; i < d.size(); i++)
            for (int j = 0; j < i; j++)
                if (d.at(i, j) > d.at(a, b)) {
                    a = j;
                    b = i;
                }
        return List.of(a, b);
    }

    /** Turns stretches around and moves stretches elsewhere as long as that clearly shortens the path. */
    private static int[] improved(FocusDistances d, int[] start, double clear) {
        int[] path = start;
        boolean better = true;
        while (better) {
            better = false;
            for (int from = 0; from < path.length; from++) {
                for (int to = from + 1; to < path.length; to++) {
                    int[] next = shorter(d, path, from, to, clear);
                    if (next.length == 0) continue;
                    path = next;
                    better = true;
                }
            }
        }
        return path;
    }

    /** The path with from..to reversed, or with the frames at the two places moved or exchanged; empty if none is shorter. */
    private static int[] shorter(FocusDistances d, int[] path, int from, int to, double clear) {
        double goal = length(d, path) - clear;
        int[][] candidates = {
            reversed(path, from, to), moved(path, from, to), moved(path, to, from), exchanged(path, from, to)
        };
        for (int[] candidate : candidates) if (length(d, candidate) < goal) return candidate;
        return new int[0];
    }

    private static int[] reversed(int[] path, int from, int to) {
        int[] r = path.clone();
        for (int i = from; i <= to; i++) r[i] = path[from + to - i];
        return r;
    }

    private static int[] moved(int[] path, int from, int to) {
        int[] r = path.clone();
        if (from < to) System.arraycopy(path, from + 1, r, from, to - from);
        else System.arraycopy(path, to, r, to + 1, from - to);
        r[to] = path[from];
        return r;
    }

    private static int[] exchanged(int[] path, int a, int b) {
        int[] r = path.clone();
        r[a] = path[b];
        r[b] = path[a];
        return r;
    }

    /** Whether more pairs rise than fall. */
    static boolean rises(int[] path) {
        int rising = 0;
        for (int i = 0; i < path.length; i++) {
            for (int k = 0; k < i; k++) rising += Integer.compare(path[i], path[k]);
        }
        return rising >= 0;
    }

    private static boolean[] longestRising(int[] v) {
        int n = v.length;
        int[] length = new int[n];
        int[] previous = new int[n];
        int best = 0;
        for (int i = 0; i < n; i++) {
            length[i] = 1;
            previous[i] = -1;
            for (int k = 0; k < i; k++) {
                if (v[k] < v[i] && length[k] + 1 > length[i]) {
                    length[i] = length[k] + 1;
                    previous[i] = k;
                }
            }
            if (length[i] > length[best]) best = i;
        }
        boolean[] marked = new boolean[n];
        for (int i = n == 0 ? -1 : best; i >= 0; i = previous[i]) marked[i] = true;
        return marked;
    }

    static double median(double[] values) {
        if (values.length == 0) return 0;
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
