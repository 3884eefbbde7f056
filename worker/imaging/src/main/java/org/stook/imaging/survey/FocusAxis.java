package org.stook.imaging.survey;

import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The frames of a sweep in focus order.
 *
 * @param frames by index in capture order
 * @param positions of the frames, rising from 0, in usual steps
 * @param deviations expected error of each
 * @param tiles place of every tile on the same axis, NaN where it is not known
 */
record FocusAxis(int[] frames, double[] positions, double[] deviations, double[] tiles) {
    /** Fewer frames do not make an axis; they stay as captured. */
    static final int FEWEST = 4;
    /** Frames closer than this share of a step keep the order of capture. */
    private static final double CLOSE = 0.15;

    static FocusAxis of(List<FrameSurvey> all, int[] kept) {
        int[] start = Arrays.stream(Seriation.order(FocusDistances.between(all, kept)))
                .map(i -> kept[i])
                .toArray();
        int tiles = all.get(kept[0]).tiles();
        if (kept.length < FEWEST) return captured(start, tiles);
        FocusModel model = new FocusModel(all, start).fit();
        Integer[] ranks = IntStream.range(0, start.length).boxed().toArray(Integer[]::new);
        Arrays.sort(ranks, Comparator.comparingDouble(model::position));
        hearCapture(ranks, start, model);
        FocusAxis axis = new FocusAxis(
                Arrays.stream(ranks).mapToInt(r -> start[r]).toArray(),
                Arrays.stream(ranks).mapToDouble(model::position).toArray(),
                Arrays.stream(ranks).mapToDouble(model::deviation).toArray(),
                IntStream.range(0, tiles).mapToDouble(model::tile).toArray());
        return Seriation.rises(axis.frames) ? axis : axis.reversed();
    }

    private static FocusAxis captured(int[] frames, int tiles) {
        double[] unknown = new double[tiles];
        Arrays.fill(unknown, Double.NaN);
        double[] deviations = new double[frames.length];
        Arrays.fill(deviations, 1);
        double[] positions = IntStream.range(0, frames.length).asDoubleStream().toArray();
        return new FocusAxis(frames, positions, deviations, unknown);
    }

    /** Exchanges neighbours that lie too close to tell, back into the order in which the start had them. */
    private static void hearCapture(Integer[] ranks, int[] start, FocusModel model) {
        boolean rising = Seriation.rises(start);
        for (int pass = 0; pass < ranks.length; pass++) {
            for (int i = 0; i + 1 < ranks.length; i++) {
                boolean close = model.position(ranks[i + 1]) - model.position(ranks[i]) < CLOSE;
                if (close && start[ranks[i]] > start[ranks[i + 1]] == rising) {
                    Integer swap = ranks[i];
                    ranks[i] = ranks[i + 1];
                    ranks[i + 1] = swap;
                }
            }
        }
    }

    private FocusAxis reversed() {
        int n = frames.length;
        double last = positions[n - 1];
        return new FocusAxis(
                IntStream.range(0, n).map(i -> frames[n - 1 - i]).toArray(),
                IntStream.range(0, n)
                        .mapToDouble(i -> last - positions[n - 1 - i])
                        .toArray(),
                IntStream.range(0, n).mapToDouble(i -> deviations[n - 1 - i]).toArray(),
                Arrays.stream(tiles).map(z -> last - z).toArray());
    }

    FocusAxis without(List<Integer> gone) {
        int[] left = IntStream.range(0, frames.length)
                .filter(i -> !gone.contains(frames[i]))
                .toArray();
        return new FocusAxis(
                Arrays.stream(left).map(i -> frames[i]).toArray(),
                Arrays.stream(left).mapToDouble(i -> positions[i]).toArray(),
                Arrays.stream(left).mapToDouble(i -> deviations[i]).toArray(),
                tiles);
    }

    /** How surely the least sure neighbours stand the right way round: 1 for a step of many deviations, 0.5 for none. */
    double confidence() {
        if (frames.length < FEWEST) return frames.length == 1 ? 1 : 0.5;
        double least = 1;
        for (int i = 0; i + 1 < frames.length; i++) {
            double sigma = Math.hypot(deviations[i], deviations[i + 1]);
            double z = (positions[i + 1] - positions[i]) / Math.max(1e-6, sigma);
            // The logistic curve that is nearest to the normal distribution (within 0.01).
            least = Math.min(least, 1 / (1 + Math.exp(-1.702 * z)));
        }
        return least;
    }

    /** Rank with fraction of a place on the axis, 0 to frames - 1. */
    double rank(double place) {
        int n = frames.length;
        if (n == 1 || place <= positions[0]) return 0;
        for (int i = 0; i + 1 < n; i++) {
            double step = positions[i + 1] - positions[i];
            if (place < positions[i + 1] && step > 0) return i + (place - positions[i]) / step;
        }
        return n - 1;
    }
}
