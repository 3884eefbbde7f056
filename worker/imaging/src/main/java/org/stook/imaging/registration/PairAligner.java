package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Placement;

/** Finds matches between two frames, coarse to fine: each level's matches make the guess for the next finer one. */
final class PairAligner {
    private static final int CELLS_ACROSS = 24;
    private static final double LEAST_ZNCC = 0.5;
    /** Levels, from the finest, whose matches are kept: coarser ones hold where all is defocused. */
    private static final int KEPT_LEVELS = 3;
    /** How far a match may end from the guess, level pixels. */
    private static final double REACH = 6;

    private static final int FEWEST = 8;

    private final Coordinates coordinates;
    private final int threads;

    PairAligner(Coordinates coordinates, int threads) {
        this.coordinates = coordinates;
        this.threads = threads;
    }

    /** Matches of {@code levels} sizes from the coarsest asked for; the guess improves from level to level. */
    PairFound align(FrameLevels first, FrameLevels second, Placement guess, boolean fromCoarsest) {
        int from = fromCoarsest
                ? first.levels().size() - 1
                : Math.min(KEPT_LEVELS, first.levels().size()) - 1;
        Placement map = guess;
        List<Match> kept = new ArrayList<>();
        double support = 0;
        for (int l = from; l >= 0; l--) {
            List<Match> found = matches(first.levels().get(l), second.levels().get(l), map);
            if (found.size() >= FEWEST) {
                map = fit(found, map, found.size() < 40 ? Model.SIMILARITY : Model.AFFINE);
                support = support(
                        found, map, coordinates.unit() / first.levels().get(l).reduction());
            } else {
                support = 0;
            }
            if (l < KEPT_LEVELS) kept.addAll(found);
        }
        return new PairFound(new Pair(first.frame(), second.frame(), kept), map, support);
    }

    private List<Match> matches(Level a, Level b, Placement guess) {
        List<Level.Spot> spots = a.spots(CELLS_ACROSS, TileMatcher.RADIUS + 2);
        TileMatcher matcher = new TileMatcher(a, b, coordinates, guess, REACH);
        Match[] found = new Match[spots.size()];
        Parallel.forEach(spots.size(), threads, i -> found[i] = matcher.match(spots.get(i)));
        return Arrays.stream(found)
                .filter(Objects::nonNull)
                .filter(m -> m.zncc() >= LEAST_ZNCC)
                .toList();
    }

    private static Placement fit(List<Match> matches, Placement guess, Model model) {
        Pair pair = new Pair(0, 1, matches);
        try {
            return new Adjustment(
                            List.of(pair), List.of(Placement.identity(), guess), new boolean[] {true, false}, model)
                    .solve()
                    .placements()
                    .get(1);
        } catch (ArithmeticException e) {
            return guess;
        }
    }

    /** Share of matches within a pixel of the map, times how many there are (full marks from 40 on). */
    private static double support(List<Match> matches, Placement map, double unit) {
        long near = matches.stream()
                .filter(m -> Math.hypot(map.x(m.px(), m.py()) - m.qx(), map.y(m.px(), m.py()) - m.qy()) * unit < 1)
                .count();
        return (double) near / matches.size() * Math.min(1, near / 40.0);
    }

    /** What was found between two frames, the map between them and how well it is supported, 0 to 1. */
    record PairFound(Pair pair, Placement map, double support) {}
}
