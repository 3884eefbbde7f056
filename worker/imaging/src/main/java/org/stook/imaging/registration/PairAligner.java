package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Placement;

/** Finds matches between two frames, coarse to fine: the matches so far make the guess for the next finer level. */
final class PairAligner {
    private static final int CELLS_ACROSS = 16;
    private static final double LEAST_ZNCC = 0.5;
    /** Fewer matches do not make a guess. */
    static final int FEWEST = 8;
    /** From so many matches on, a pair may have its own affine map, and counts as well supported. */
    private static final int MANY = 40;

    private final Coordinates coordinates;
    private final int threads;

    PairAligner(Coordinates coordinates, int threads) {
        this.coordinates = coordinates;
        this.threads = threads;
    }

    /** Matches at all levels, starting from a guess that may be off by a few pixels of the coarsest level. */
    PairFound align(FrameLevels first, FrameLevels second, Placement guess) {
        Placement map = guess;
        List<Pair> kept = new ArrayList<>();
        int count = 0;
        double support = 0;
        for (int l = first.levels().size() - 1; l >= 0; l--) {
            boolean coarsest = l == first.levels().size() - 1;
            List<Match> found = matches(first.levels().get(l), second.levels().get(l), map, coarsest);
            kept.add(new Pair(first.frame(), second.frame(), found));
            count += found.size();
            if (count < FEWEST) continue;
            map = fit(kept, map, count < MANY ? Model.SIMILARITY : Model.AFFINE);
            support = Math.max(
                    support,
                    support(
                            found,
                            map,
                            coordinates.unit() / first.levels().get(l).reduction()));
        }
        return new PairFound(first.frame(), second.frame(), kept, map, support);
    }

    private List<Match> matches(Level a, Level b, Placement guess, boolean coarsest) {
        List<Level.Spot> spots = a.spots(CELLS_ACROSS, TileFit.RADIUS + 2);
        TileMatcher matcher = new TileMatcher(a, b, coordinates, guess, coarsest);
        Match[] found = new Match[spots.size()];
        Parallel.forEach(spots.size(), threads, i -> found[i] = matcher.match(spots.get(i)));
        return Arrays.stream(found)
                .filter(Objects::nonNull)
                .filter(m -> m.zncc() >= LEAST_ZNCC)
                .toList();
    }

    static Placement fit(List<Pair> levels, Placement guess, Model model) {
        List<Pair> pairs = levels.stream().map(p -> new Pair(0, 1, p.matches())).toList();
        List<Placement> start = List.of(Placement.identity(), guess);
        try {
            return new Adjustment(pairs, start, new boolean[] {true, false}, model)
                    .solve()
                    .placements()
                    .get(1);
        } catch (ArithmeticException e) {
            return guess;
        }
    }

    /** Share of matches within a level pixel of the map, times how many those are (full marks from {@link #MANY} on). */
    private static double support(List<Match> matches, Placement map, double unit) {
        long near = matches.stream()
                .filter(m -> Math.hypot(map.x(m.px(), m.py()) - m.qx(), map.y(m.px(), m.py()) - m.qy()) * unit < 1)
                .count();
        return matches.isEmpty() ? 0 : (double) near / matches.size() * Math.min(1, near / (double) MANY);
    }

    /**
     * What was found between two frames.
     *
     * @param levels the matches of each level as a pair of its own: each size has its own scale of errors
     * @param map first to second, normal coordinates
     * @param support of the map by the matches, 0 to 1
     */
    record PairFound(int first, int second, List<Pair> levels, Placement map, double support) {}
}
