package org.stook.app.sorting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * Shots of one kind that follow each other.
 *
 * @param stack the sealed stack whose sweep it is, null for anything else
 */
record Segment(Kind kind, List<Shot> shots, @Nullable Long stack) {
    enum Kind {
        /** The sweep of a sealed stack. */
        SEALED,
        /** Frames of a label. */
        SLATE,
        /** Frames of a label that could not be read. */
        UNREAD,
        /** Enough frames alike to be a sweep. */
        SWEEP,
        /** One or two frames on their own. */
        ODD,
        /** Black or blown out. */
        BLANK
    }

    /** Fewer frames than this, unlike what is before and after, are no sweep. */
    static final int SHORTEST_SWEEP = 3;

    /** As many runs are looked back through for the one that a shot goes on: what lies between are strays. */
    private static final int LOOKED_BACK = 5;

    /**
     * In the order in which they end, strays before the run they lie in; sealed sweeps as they begin, before what may belong to
     * them. A run goes on across strays, never across a slate.
     *
     * @param shots in order of capture
     */
    static List<Segment> of(List<Sorter.Sealed> sealed, List<Shot> shots, Sameness same) {
        return Stream.concat(
                        sealed.stream().map(s -> new Segment(Kind.SEALED, s.sweep(), s.stack())),
                        runs(shots, same).stream()
                                .flatMap(Segment::sweeps)
                                .map(run -> new Segment(kind(run, same, shots), List.copyOf(run), null)))
                .sorted(Comparator.comparing(Segment::place, Shot.BY_TIME))
                .toList();
    }

    /** A run of several sweeps of one view, sweep by sweep. */
    private static Stream<List<Shot>> sweeps(List<Shot> run) {
        int end = Restart.in(run);
        return end == run.size()
                ? Stream.of(run)
                : Stream.concat(Stream.of(run.subList(0, end)), sweeps(run.subList(end, run.size())));
    }

    private static List<List<Shot>> runs(List<Shot> shots, Sameness same) {
        List<List<Shot>> runs = new ArrayList<>();
        int since = 0;
        for (Shot shot : shots) {
            if (same.isSlate(shot, shots)) {
                boolean again = since > 0 && since == runs.size();
                (again ? runs.get(since - 1) : begin(runs)).add(shot);
                since = runs.size();
            } else {
                run(runs, since, shot, same).add(shot);
            }
        }
        return runs;
    }

    private static List<Shot> run(List<List<Shot>> runs, int since, Shot shot, Sameness same) {
        boolean label = false;
        for (int i = runs.size() - 1; i >= Math.max(since, runs.size() - LOOKED_BACK); i--) {
            List<Shot> run = runs.get(i);
            Shot last = run.get(run.size() - 1);
            if (!shot.isBlank() && !last.isBlank() && same.goesOn(last, shot) && !same.isCrossed(label, last, shot)) {
                return run;
            }
            label |= run.get(0).sight().unread() > 0;
        }
        return begin(runs);
    }

    private static List<Shot> begin(List<List<Shot>> runs) {
        List<Shot> run = new ArrayList<>();
        runs.add(run);
        return run;
    }

    private static Kind kind(List<Shot> run, Sameness same, List<Shot> all) {
        if (run.get(0).isBlank()) {
            return Kind.BLANK;
        }
        if (same.isSlate(run.get(0), all)) {
            return Kind.SLATE;
        }
        if (run.size() >= SHORTEST_SWEEP) {
            return Kind.SWEEP;
        }
        return run.stream().anyMatch(shot -> shot.sight().unread() > 0) ? Kind.UNREAD : Kind.ODD;
    }

    Shot first() {
        return shots.get(0);
    }

    private Shot place() {
        return kind == Kind.SEALED ? first() : shots.get(shots.size() - 1);
    }

    boolean isSweep() {
        return kind == Kind.SWEEP || kind == Kind.SEALED;
    }

    boolean isPicture() {
        return kind != Kind.BLANK;
    }

    boolean isLabel() {
        return kind == Kind.UNREAD;
    }
}
