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
 * @param lacks by how much each frame is less sharp than its place promises, natural logarithm of energy
 * @param tiles place of every tile on the same axis, NaN where it is not known
 */
record FocusAxis(int[] frames, double[] positions, double[] deviations, double[] lacks, double[] tiles) {
    /** Fewer frames do not make an axis; they stay as captured. */
    static final int FEWEST = 4;
    /** Frames closer than this share of a step keep the order of capture. */
    private static final double CLOSE = 0.15;
    /** A motion of five pixels takes more than this; one of three less. */
    private static final double SOFT = 0.45;

    private static final double SPREADS = 5;

    static FocusAxis of(List<FrameSurvey> all, int[] kept) {
        FocusDistances distances = FocusDistances.between(all, kept);
        int[] path = Seriation.order(distances);
        int tiles = all.get(kept[0]).tiles();
        if (kept.length < FEWEST) return captured(select(kept, path), tiles);
        FocusModel model = new FocusModel(all, select(kept, path), distances.along(path)).fit();
        int[] captured = IntStream.range(0, kept.length).toArray();
        if (Arrays.equals(path, captured)) return of(select(kept, path), model, tiles);
        // Across a wide gap far frames look alike, and the shortest path may turn a whole run of frames around.
        FocusModel other = new FocusModel(all, kept, distances.along(captured)).fit();
        return other.misfit() < model.misfit() ? of(kept, other, tiles) : of(select(kept, path), model, tiles);
    }

    private static int[] select(int[] kept, int[] path) {
        return Arrays.stream(path).map(i -> kept[i]).toArray();
    }

    private static FocusAxis of(int[] start, FocusModel model, int tiles) {
        Integer[] ranks = IntStream.range(0, start.length).boxed().toArray(Integer[]::new);
        Arrays.sort(ranks, Comparator.comparingDouble(model::position));
        hearCapture(ranks, start, model);
        FocusAxis axis = new FocusAxis(
                Arrays.stream(ranks).mapToInt(r -> start[r]).toArray(),
                Arrays.stream(ranks).mapToDouble(model::position).toArray(),
                Arrays.stream(ranks).mapToDouble(model::deviation).toArray(),
                Arrays.stream(ranks).mapToDouble(model::lack).toArray(),
                IntStream.range(0, tiles).mapToDouble(model::tile).toArray());
        return Seriation.rises(axis.frames) ? axis : axis.reversed();
    }

    private static FocusAxis captured(int[] frames, int tiles) {
        double[] unknown = new double[tiles];
        Arrays.fill(unknown, Double.NaN);
        double[] deviations = new double[frames.length];
        Arrays.fill(deviations, 1);
        double[] positions = IntStream.range(0, frames.length).asDoubleStream().toArray();
        return new FocusAxis(frames, positions, deviations, new double[frames.length], unknown);
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

    FocusAxis reversed() {
        int n = frames.length;
        double last = positions[n - 1];
        return new FocusAxis(
                IntStream.range(0, n).map(i -> frames[n - 1 - i]).toArray(),
                IntStream.range(0, n)
                        .mapToDouble(i -> last - positions[n - 1 - i])
                        .toArray(),
                IntStream.range(0, n).mapToDouble(i -> deviations[n - 1 - i]).toArray(),
                IntStream.range(0, n).mapToDouble(i -> lacks[n - 1 - i]).toArray(),
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
                Arrays.stream(left).mapToDouble(i -> lacks[i]).toArray(),
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

    /**
     * Frames, by index in capture order, that are clearly less sharp than their places promise, and more so than the sweep's
     * other frames differ among themselves.
     */
    List<Integer> soft() {
        double usual = Seriation.median(lacks);
        double spread = Seriation.median(
                Arrays.stream(lacks).map(v -> Math.abs(v - usual)).toArray());
        double limit = Math.max(SOFT, SPREADS * spread);
        return IntStream.range(0, frames.length)
                .filter(i -> lacks[i] - usual > limit)
                .mapToObj(i -> frames[i])
                .sorted()
                .toList();
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
