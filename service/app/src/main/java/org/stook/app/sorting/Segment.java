package org.stook.app.sorting;

import java.util.ArrayList;
import java.util.List;

/** Consecutive shots of one kind. */
record Segment(Kind kind, List<Shot> shots) {
    enum Kind {
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

    static List<Segment> of(List<Shot> shots, Sameness same) {
        List<Segment> segments = new ArrayList<>();
        List<Shot> run = new ArrayList<>();
        List<Shot> blanks = new ArrayList<>();
        for (Shot shot : shots) {
            if (shot.isBlank()) {
                blanks.add(shot);
                continue;
            }
            boolean slate = same.isSlate(shot, shots);
            if (!run.isEmpty()
                    && (slate || same.isSlate(run.get(0), shots) || !same.goesOn(run.get(run.size() - 1), shot))) {
                flush(run, blanks, same, shots, segments);
            }
            run.add(shot);
        }
        flush(run, blanks, same, shots, segments);
        return segments;
    }

    private static void flush(
            List<Shot> run, List<Shot> blanks, Sameness same, List<Shot> all, List<Segment> segments) {
        if (!run.isEmpty()) {
            segments.add(new Segment(kind(run, same, all), List.copyOf(run)));
        }
        if (!blanks.isEmpty()) {
            segments.add(new Segment(Kind.BLANK, List.copyOf(blanks)));
        }
        run.clear();
        blanks.clear();
    }

    private static Kind kind(List<Shot> run, Sameness same, List<Shot> all) {
        if (same.isSlate(run.get(0), all)) {
            return Kind.SLATE;
        }
        if (run.size() >= SHORTEST_SWEEP) {
            return Kind.SWEEP;
        }
        return run.stream().anyMatch(shot -> shot.sight().unread() > 0) ? Kind.UNREAD : Kind.ODD;
    }
}
