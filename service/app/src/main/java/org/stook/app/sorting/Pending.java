package org.stook.app.sorting;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.stook.app.station.StationSettings.Slates;

/** Odd shots that wait until it is clear which stack they belong to, as strays or as more. */
final class Pending {
    private static final String ODD = "shows another framing, subject or exposure than the sweep (a card, a test shot)";

    private final Slates slates;
    private List<Segment> waiting = new ArrayList<>();

    Pending(Slates slates) {
        this.slates = slates;
    }

    void add(Segment segment) {
        waiting.add(segment);
    }

    boolean isEmpty() {
        return waiting.isEmpty();
    }

    Segment first() {
        return waiting.get(0);
    }

    /** Whether what seems to be a label is among them. */
    boolean hasLabel() {
        return waiting.stream().anyMatch(Segment::isLabel);
    }

    /** Whether a picture among them was shot so long after the stack's own that it is likely of another. */
    boolean isApart(Group group, Sameness same) {
        List<Shot> sweep = group.sweep();
        return !sweep.isEmpty()
                && waiting.stream()
                        .anyMatch(s -> s.isPicture() && same.isApart(sweep.get(sweep.size() - 1), s.first()));
    }

    List<Shot> shots() {
        return waiting.stream().flatMap(s -> s.shots().stream()).toList();
    }

    /** Those that go a sweep on are of it. */
    void resume(Group group, Sameness same) {
        List<Segment> rest = new ArrayList<>();
        for (Segment segment : waiting) {
            if (segment.isPicture() && same.resumes(group.sweep(), segment.first())) {
                group.sweep(segment.shots());
            } else {
                rest.add(segment);
            }
        }
        waiting = rest;
    }

    /** A labelled stack without a sweep: the most that was shot of one kind is its sweep. */
    void adopt(Group group) {
        if (group.stack() != null || group.slates().isEmpty() || !group.sweep().isEmpty()) {
            return;
        }
        Optional<Segment> most = waiting.stream()
                .filter(s -> s.isPicture() && !s.isLabel())
                .max(Comparator.comparingInt(s -> s.shots().size()));
        most.ifPresent(segment -> {
            waiting.remove(segment);
            group.sweep(segment.shots());
        });
    }

    /**
     * Before a new stack begins. Unread labels go where labels are due; of the others those nearer to the stack before belong
     * there, the rest waits for the new one.
     */
    void nearest(Group before, Shot next) {
        List<Shot> own = before.sweep().isEmpty() ? before.slates() : before.sweep();
        if (own.isEmpty()) {
            return;
        }
        Shot last = own.get(own.size() - 1);
        List<Segment> rest = new ArrayList<>();
        for (Segment segment : waiting) {
            if (segment.isLabel() && slates == Slates.LAST && before.asks()) {
                segment.shots().forEach(before::slate);
            } else if (!(segment.isLabel() && slates == Slates.FIRST) && nearer(segment.first(), last, next)) {
                strays(before, segment);
            } else {
                rest.add(segment);
            }
        }
        waiting = rest;
    }

    private static boolean nearer(Shot odd, Shot last, Shot next) {
        return Sameness.pause(last, odd).compareTo(Sameness.pause(odd, next)) <= 0;
    }

    /** All belong to this stack. */
    void settle(Group group) {
        for (Segment segment : waiting) {
            boolean due = group.sweep().isEmpty() ? slates == Slates.FIRST : slates == Slates.LAST;
            if (segment.isLabel() && due && group.asks()) {
                segment.shots().forEach(group::slate);
            } else {
                strays(group, segment);
            }
        }
        waiting = new ArrayList<>();
    }

    private static void strays(Group group, Segment segment) {
        for (Shot shot : segment.shots()) {
            if (shot.kept()) {
                group.sweep(List.of(shot));
            } else {
                group.stray(shot, shot.isBlank() ? shot.sight().blank() : ODD);
            }
        }
    }
}
