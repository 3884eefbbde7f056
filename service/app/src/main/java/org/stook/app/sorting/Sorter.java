package org.stook.app.sorting;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stook.app.station.StationSettings.Slates;
import org.stook.app.station.StationSettings.Splitting;

/** Puts the shots of one camera into groups, one for each stack. The same shots give the same groups. */
public final class Sorter {
    /**
     * @param groups in order of capture
     * @param open shots at the end that may be the beginning of something: they wait for what comes
     */
    public record Sorted(List<Group> groups, List<Shot> open) {}

    private static final String ODD = "shows another framing, subject or exposure than the sweep (a card, a test shot)";

    private final Slates slates;
    private final Sameness same;
    private final List<Group> groups = new ArrayList<>();
    private final List<Segment> pending = new ArrayList<>();
    private @Nullable Group current;

    private Sorter(Splitting rules) {
        this.slates = rules.slates();
        this.same = new Sameness(rules);
    }

    /**
     * @param before the sweep of the stack that was sealed last, which these may still belong to; null if there is none
     * @param shots of one camera
     * @param ended whether nothing has come for so long that the last stack is over
     */
    public static Sorted sort(@Nullable Sealed before, List<Shot> shots, Splitting rules, boolean ended) {
        Sorter sorter = new Sorter(rules);
        if (before != null) {
            sorter.begin(before.stack(), before.sweep().get(0)).known(before.sweep());
        }
        for (Segment segment : Segment.of(shots.stream().sorted(Shot.BY_TIME).toList(), sorter.same)) {
            sorter.take(segment);
        }
        return sorter.sorted(ended);
    }

    /** A sealed stack and its sweep in order of capture. */
    public record Sealed(long stack, List<Shot> sweep) {}

    private void take(Segment segment) {
        switch (segment.kind()) {
            case SLATE -> slate(segment);
            case UNREAD -> {
                if (slates == Slates.NONE) {
                    odd(segment);
                } else {
                    slate(segment);
                }
            }
            case SWEEP -> sweep(segment);
            case ODD, BLANK -> odd(segment);
        }
    }

    private void slate(Segment segment) {
        Group group = current;
        if (slates == Slates.LAST) {
            // A second picture of the label follows the first.
            Group labelled = group == null ? begin(null, segment.shots().get(0)) : group;
            settle(labelled);
            segment.shots().forEach(labelled::slate);
            return;
        }
        boolean again = group != null && group.stack() == null && group.sweep().isEmpty() && pending.isEmpty();
        Group labelled =
                again && group != null ? group : begin(null, segment.shots().get(0));
        segment.shots().forEach(labelled::slate);
    }

    private void sweep(Segment segment) {
        Group group = current;
        if (group != null && (same.resumes(group.sweep(), segment.shots().get(0)) || patched(group, segment))) {
            settle(group);
            group.sweep(segment.shots());
            return;
        }
        boolean awaited =
                group != null && group.stack() == null && group.sweep().isEmpty() && slates != Slates.LAST;
        Group taker =
                awaited && group != null ? group : begin(null, segment.shots().get(0));
        settle(taker);
        taker.sweep(segment.shots());
    }

    private boolean patched(Group group, Segment segment) {
        boolean labelled = slates == Slates.LAST && !group.slates().isEmpty();
        return !labelled && same.patches(group.sweep(), segment.shots());
    }

    private void odd(Segment segment) {
        Group group = current;
        boolean picture = segment.kind() != Segment.Kind.BLANK;
        if (picture
                && group != null
                && (same.resumes(group.sweep(), segment.shots().get(0)) || patched(group, segment))) {
            settle(group);
            group.sweep(segment.shots());
        } else {
            pending.add(segment);
        }
    }

    private Group begin(@Nullable Long stack, Shot first) {
        Group before = current;
        if (before != null) {
            nearest(before, first);
            before.close();
        }
        Group group = new Group(stack);
        groups.add(group);
        current = group;
        return group;
    }

    /** Odd shots before a new stack: those nearer to the stack before belong there, the others wait for the new one. */
    private void nearest(Group before, Shot next) {
        List<Shot> own = before.sweep().isEmpty() ? before.slates() : before.sweep();
        if (own.isEmpty() || before.stack() != null) {
            return;
        }
        Shot last = own.get(own.size() - 1);
        while (!pending.isEmpty() && nearer(pending.get(0).shots().get(0), last, next)) {
            strays(before, pending.remove(0));
        }
    }

    private static boolean nearer(Shot odd, Shot last, Shot next) {
        return Sameness.pause(last, odd).compareTo(Sameness.pause(odd, next)) <= 0;
    }

    private void settle(Group group) {
        pending.forEach(segment -> strays(group, segment));
        pending.clear();
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

    private Sorted sorted(boolean ended) {
        Group group = current;
        if (ended && !pending.isEmpty()) {
            settle(
                    group == null || group.stack() != null
                            ? begin(null, pending.get(0).shots().get(0))
                            : group);
        }
        List<Shot> open = pending.stream().flatMap(s -> s.shots().stream()).toList();
        return new Sorted(
                groups.stream()
                        .filter(g -> g.stack() == null || !g.fresh().isEmpty())
                        .toList(),
                open);
    }
}
