package org.stook.imaging.registration;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.frame.Placement;

/** Turns the pairs of a sweep into placements, chooses the model and says what is doubtful. */
final class Settlement {
    /**
     * How many times larger errors are than the matches alone promise: a tile is counted in several pairs and sizes, and
     * what defocus does to it is not chance. Measured on rendered brackets with known placements.
     */
    static final double OPTIMISM = 5;

    private final int frames;
    private final int reference;
    private final Coordinates coordinates;
    private final int threads;

    Settlement(int frames, int reference, Coordinates coordinates, int threads) {
        this.threads = threads;
        this.frames = frames;
        this.reference = reference;
        this.coordinates = coordinates;
    }

    /** @param blank frames in which there is nothing to match */
    Registration settle(List<PairAligner.PairFound> found, BitSet blank) {
        Placement[] start = new Placement[frames];
        chain(found, start);
        boolean[] reached = new boolean[frames];
        for (int f = 0; f < frames; f++) reached[f] = start[f] != null;
        List<Pair> pairs = found.stream()
                .flatMap(f -> f.levels().stream())
                .filter(p -> reached[p.first()] && reached[p.second()])
                .toList();
        List<Placement> filled = filled(start);
        boolean[] held = new boolean[frames];
        for (int f = 0; f < frames; f++) held[f] = f == reference || !reached[f];
        ModelChoice.Choice choice = ModelChoice.choose(pairs, filled, held, threads);
        double parallax = new Parallax(coordinates, choice.adjusted().placements())
                .over(Parallax.farthest(frames, reference), found);
        return new Registration(reference, choice.model(), parallax, placed(choice, pairs, reached, blank));
    }

    /** Follows the nearest pairs out from the reference. */
    private void chain(List<PairAligner.PairFound> found, @org.jspecify.annotations.Nullable Placement[] start) {
        start[reference] = Placement.identity();
        Deque<Integer> open = new ArrayDeque<>(List.of(reference));
        while (!open.isEmpty()) {
            int from = open.remove();
            Placement here = start[from];
            for (PairAligner.PairFound p : found) {
                int to = p.first() == from ? p.second() : p.first();
                boolean touches = p.first() == from || p.second() == from;
                if (!touches || start[to] != null || here == null) continue;
                start[to] = here.then(p.first() == from ? p.map() : p.map().inverse());
                open.add(to);
            }
        }
    }

    /** Frames that no pair reaches take the placement of the nearest one that is placed. */
    private List<Placement> filled(@org.jspecify.annotations.Nullable Placement[] start) {
        List<Placement> result = new ArrayList<>();
        for (int f = 0; f < frames; f++) {
            Placement nearest = Placement.identity();
            for (int d = frames - 1; d >= 0; d--) {
                Placement before = f - d >= 0 ? start[f - d] : null;
                Placement after = f + d < frames ? start[f + d] : null;
                if (after != null) nearest = after;
                if (before != null) nearest = before;
            }
            result.add(nearest);
        }
        return result;
    }

    private List<Placed> placed(ModelChoice.Choice choice, List<Pair> pairs, boolean[] reached, BitSet blank) {
        Adjusted adjusted = choice.adjusted();
        double[] corners = new double[frames];
        for (int f = 0; f < frames; f++) corners[f] = reached[f] ? cornerError(adjusted, f) : Double.POSITIVE_INFINITY;
        List<Optional<Doubt>> doubts = new RampCheck(coordinates, blank).doubts(adjusted.placements(), corners);
        List<Placed> result = new ArrayList<>();
        for (int f = 0; f < frames; f++) {
            double confidence = 1 / (1 + corners[f] * corners[f]);
            double residual = residual(adjusted, pairs, f);
            Placement pixels = f == reference
                    ? Placement.identity()
                    : coordinates.toPixels(adjusted.placements().get(f));
            result.add(new Placed(pixels, corners[f], residual, confidence, doubts.get(f)));
        }
        return result;
    }

    private double cornerError(Adjusted adjusted, int frame) {
        double x = (coordinates.width() - 1) / 2.0 / coordinates.unit();
        double y = (coordinates.height() - 1) / 2.0 / coordinates.unit();
        double worst = 0;
        for (int corner = 0; corner < 4; corner++) {
            double e = adjusted.errorAt(frame, (corner & 1) == 0 ? -x : x, (corner & 2) == 0 ? -y : y);
            worst = Math.max(worst, e);
        }
        return OPTIMISM * worst * coordinates.unit();
    }

    private double residual(Adjusted adjusted, List<Pair> pairs, int frame) {
        double[] errors = pairs.stream()
                .filter(p -> p.first() == frame || p.second() == frame)
                .flatMapToDouble(p -> {
                    Placement map = adjusted.placements()
                            .get(p.first())
                            .inverse()
                            .then(adjusted.placements().get(p.second()));
                    return p.matches().stream()
                            .mapToDouble(
                                    m -> Math.hypot(map.x(m.px(), m.py()) - m.qx(), map.y(m.px(), m.py()) - m.qy()));
                })
                .toArray();
        if (errors.length == 0) return Double.NaN;
        Arrays.sort(errors);
        return errors[errors.length / 2] * coordinates.unit();
    }
}
