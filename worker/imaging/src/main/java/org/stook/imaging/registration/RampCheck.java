package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.frame.Placement;

/**
 * Holds the placements against what a sweep does: scale and shift change smoothly and in one direction. A frame beside
 * the path was bumped, a step in the path means that something moved, a scale against the trend stands at the wrong place.
 */
final class RampCheck {
    /** A shift that a firm stand also shows, share of the half long side: 8 pixels on a 24 megapixel frame are 0.0027. */
    private static final double FIRM = 0.002;
    /** In how many usual deviations a shift is no longer usual. */
    private static final double UNUSUAL = 8;

    private static final int NEIGHBOURS = 5;

    private final Coordinates coordinates;

    RampCheck(Coordinates coordinates) {
        this.coordinates = coordinates;
    }

    /** One entry per frame, in order. */
    List<Optional<Doubt>> doubts(Adjusted adjusted, boolean[] reached, double[] cornerErrors) {
        int n = reached.length;
        List<Optional<Doubt>> doubts = new ArrayList<>();
        for (int f = 0; f < n; f++) doubts.add(basic(f, reached[f], cornerErrors[f]));
        int[] sure = frames(doubts);
        if (sure.length >= 4) {
            shifts(adjusted, sure, doubts);
            scales(adjusted, sure, doubts);
        }
        return doubts;
    }

    private Optional<Doubt> basic(int frame, boolean reached, double cornerError) {
        if (!reached) {
            return doubt(
                    Doubt.Reason.NOT_REGISTERED,
                    "frame %d could not be registered: too little in it matches its neighbours",
                    frame + 1);
        }
        if (cornerError > Math.max(1, 5e-4 * coordinates.unit())) {
            return doubt(
                    Doubt.Reason.UNSURE,
                    "frame %d is placed, but a corner may be off by %.1f px: little of it is sharp enough to match",
                    frame + 1,
                    cornerError);
        }
        return Optional.empty();
    }

    private static Optional<Doubt> doubt(Doubt.Reason reason, String format, Object... values) {
        return Optional.of(new Doubt(reason, String.format(java.util.Locale.ROOT, format, values)));
    }

    private static int[] frames(List<Optional<Doubt>> doubts) {
        return java.util.stream.IntStream.range(0, doubts.size())
                .filter(f -> doubts.get(f).isEmpty())
                .toArray();
    }

    private void shifts(Adjusted adjusted, int[] frames, List<Optional<Doubt>> doubts) {
        double[][] excess = excessSteps(adjusted, frames);
        double[] lengths =
                Arrays.stream(excess).mapToDouble(e -> Math.hypot(e[0], e[1])).toArray();
        double limit = Math.max(FIRM, UNUSUAL * median(lengths));
        for (int i = 0; i < lengths.length; i++) {
            if (lengths[i] <= limit) continue;
            boolean returns = i + 1 < lengths.length
                    && lengths[i + 1] > limit
                    && Math.hypot(excess[i][0] + excess[i + 1][0], excess[i][1] + excess[i + 1][1])
                            < Math.max(lengths[i], lengths[i + 1]) / 2;
            boolean first = i == 0 && !returns;
            int frame = frames[first ? 0 : i + 1];
            boolean alone = returns || first || i == lengths.length - 1;
            double px = lengths[i] * coordinates.unit();
            doubts.set(frame, alone ? bumped(frame, px) : moved(frame, px));
            if (returns) i++;
        }
    }

    private static Optional<Doubt> bumped(int frame, double px) {
        return doubt(
                Doubt.Reason.BUMPED,
                "frame %d lies %.1f px beside the path of its neighbours: it was bumped; its placement allows for that",
                frame + 1,
                px);
    }

    private static Optional<Doubt> moved(int frame, double px) {
        return doubt(
                Doubt.Reason.MOVED,
                "from frame %d on everything lies %.1f px elsewhere: stand or subject moved; the placements allow for that",
                frame + 1,
                px);
    }

    /** Steps of the frame's centre, less the usual step around there; normal units. */
    private static double[][] excessSteps(Adjusted adjusted, int[] frames) {
        int n = frames.length - 1;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            Placement a = adjusted.placements().get(frames[i]);
            Placement b = adjusted.placements().get(frames[i + 1]);
            x[i] = b.x(0, 0) - a.x(0, 0);
            y[i] = b.y(0, 0) - a.y(0, 0);
        }
        double[][] excess = new double[n][2];
        for (int i = 0; i < n; i++) {
            int from = Math.max(0, i - NEIGHBOURS);
            int to = Math.min(n, i + NEIGHBOURS + 1);
            excess[i][0] = x[i] - median(Arrays.copyOfRange(x, from, to));
            excess[i][1] = y[i] - median(Arrays.copyOfRange(y, from, to));
        }
        return excess;
    }

    private void scales(Adjusted adjusted, int[] frames, List<Optional<Doubt>> doubts) {
        double[] scale = Arrays.stream(frames)
                .mapToDouble(f -> Math.log(adjusted.placements().get(f).scaleAt(0, 0)))
                .toArray();
        double[] steps = new double[scale.length - 1];
        for (int i = 0; i < steps.length; i++) steps[i] = scale[i + 1] - scale[i];
        double usual = median(steps);
        long along = Arrays.stream(steps).filter(s -> s * usual > 0).count();
        if (Math.abs(usual) * coordinates.unit() < 0.1 || along < 0.75 * steps.length) return;
        double[] rising = Arrays.stream(scale).map(s -> s * Math.signum(usual)).toArray();
        boolean[] inOrder = longestRising(rising);
        for (int i = 0; i < rising.length; i++) {
            if (inOrder[i]) continue;
            int rank = rankAmong(rising, inOrder, i);
            if (Math.abs(misplacement(rising, inOrder, i)) < Math.abs(usual) / 2) continue;
            doubts.set(
                    frames[i],
                    doubt(
                            Doubt.Reason.OUT_OF_ORDER,
                            "frame %d stands at the wrong place: by its scale it belongs %s",
                            frames[i] + 1,
                            rank < 0 ? "first" : "after frame " + (frames[rank] + 1)));
        }
    }

    /** How far a value lies outside its neighbours that are in order; 0 when between them. */
    private static double misplacement(double[] v, boolean[] inOrder, int i) {
        double before = Double.NEGATIVE_INFINITY;
        double after = Double.POSITIVE_INFINITY;
        for (int k = 0; k < i; k++) if (inOrder[k]) before = v[k];
        for (int k = v.length - 1; k > i; k--) if (inOrder[k]) after = v[k];
        return v[i] < before ? v[i] - before : Math.max(0, v[i] - after);
    }

    private static int rankAmong(double[] v, boolean[] inOrder, int i) {
        int rank = -1;
        for (int k = 0; k < v.length; k++) if (inOrder[k] && v[k] < v[i]) rank = k;
        return rank;
    }

    /** Marks a longest rising subsequence. */
    static boolean[] longestRising(double[] v) {
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

    static double median(double[] values) {
        double[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted.length % 2 == 1
                ? sorted[sorted.length / 2]
                : (sorted[sorted.length / 2 - 1] + sorted[sorted.length / 2]) / 2;
    }
}
