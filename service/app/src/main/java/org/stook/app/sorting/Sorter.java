package org.stook.app.sorting;

import java.time.Duration;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.stook.app.station.StationSettings.Slates;
import org.stook.app.station.StationSettings.Splitting;

/** Puts the shots of one camera into groups, one for each stack. The same shots give the same groups. */
public final class Sorter {
    /** So long after a sweep's last frame the subject is still mounted, perhaps: frames shot for a gap come within it. */
    public static final Duration MOUNTED = Duration.ofMinutes(15);

    /** A sealed stack and its sweep in order of capture. */
    public record Sealed(long stack, List<Shot> sweep) {}

    /**
     * @param groups in order of capture; of sealed stacks those that something new belongs to
     * @param open shots at the end that may be the beginning of something: they wait for what comes
     */
    public record Sorted(List<Group> groups, List<Shot> open) {}

    private static final Set<Segment.Kind> NO_STRAYS =
            EnumSet.of(Segment.Kind.SEALED, Segment.Kind.SWEEP, Segment.Kind.SLATE);

    private final Slates slates;
    private final Sameness same;
    private final List<Group> groups = new ArrayList<>();
    private final Pending pending;
    private final boolean ended;
    /** The kind of what comes next and is no stray: SEALED, SWEEP or SLATE; null if nothing has come yet. */
    private Segment.@Nullable Kind next;

    private @Nullable Group current;

    private Sorter(Splitting rules, boolean ended) {
        this.ended = ended;
        this.slates = rules.slates();
        this.same = new Sameness(rules);
        this.pending = new Pending(slates);
    }

    /**
     * @param sealed stacks of the same time, which these may still belong to
     * @param shots of one camera
     * @param ended whether nothing has come for so long that the last stack is over
     */
    public static Sorted sort(List<Sealed> sealed, List<Shot> shots, Splitting rules, boolean ended) {
        Sorter sorter = new Sorter(rules, ended);
        List<Segment> segments =
                Segment.of(sealed, shots.stream().sorted(Shot.BY_TIME).toList(), sorter.same);
        for (int i = 0; i < segments.size(); i++) {
            sorter.next = segments.subList(i + 1, segments.size()).stream()
                    .map(Segment::kind)
                    .filter(NO_STRAYS::contains)
                    .findFirst()
                    .orElse(null);
            sorter.take(segments.get(i));
        }
        return sorter.sorted();
    }

    /** All of these are one stack, for somebody said so: slates, blank frames that stray, and a sweep. */
    public static Group together(List<Shot> shots, Splitting rules) {
        Sameness same = new Sameness(rules);
        Group group = new Group(null);
        List<Shot> ordered = shots.stream().sorted(Shot.BY_TIME).toList();
        for (Shot shot : ordered) {
            if (same.isSlate(shot, ordered)) {
                group.slate(shot);
            } else if (shot.isBlank() && !shot.kept()) {
                group.stray(shot, shot.sight().blank());
            } else {
                group.sweep(List.of(shot));
            }
        }
        return group;
    }

    /** Shots that a long pause separates have nothing to do with each other. @param shots in order of capture */
    public static List<List<Shot>> parts(List<Shot> shots) {
        List<List<Shot>> parts = new ArrayList<>();
        for (Shot shot : shots) {
            List<Shot> part = parts.isEmpty() ? List.of() : parts.get(parts.size() - 1);
            if (part.isEmpty()
                    || Sameness.pause(part.get(part.size() - 1), shot).compareTo(MOUNTED) > 0) {
                part = new ArrayList<>();
                parts.add(part);
            }
            part.add(shot);
        }
        return parts;
    }

    private void take(Segment segment) {
        switch (segment.kind()) {
            case SEALED -> sealed(segment);
            case SLATE -> slate(segment);
            case SWEEP -> sweep(segment);
            case UNREAD, ODD, BLANK -> odd(segment);
        }
    }

    private void sealed(Segment segment) {
        Group group = begin(segment.stack(), segment.first());
        group.known(segment.shots());
        pending.resume(group, same);
    }

    private void slate(Segment segment) {
        Group group = current;
        boolean last = slates == Slates.LAST;
        Group own = group != null && takesLabel(group) ? group : begin(null, segment.first());
        segment.shots().forEach(own::slate);
        if (last) {
            pending.adopt(own);
            pending.settle(own);
        }
    }

    /** A second picture of the label follows the first. A sealed stack has its label: another one is of another stack. */
    private boolean takesLabel(Group group) {
        if (group.stack() != null) {
            return false;
        }
        return slates == Slates.LAST
                ? !pending.isApart(group, same)
                : group.sweep().isEmpty() && pending.isEmpty();
    }

    private void sweep(Segment segment) {
        Group group = current;
        if (group != null && belongs(group, segment)) {
            pending.settle(group);
            group.sweep(segment.shots());
        } else if (group != null && next == null && !ended && same.patches(group.sweep(), segment.shots())) {
            // As yet it may be frames for a gap of the sweep before, or the first frames of another.
            pending.add(segment);
        } else {
            boolean awaited =
                    group != null && group.stack() == null && group.sweep().isEmpty() && slates != Slates.LAST;
            Group taker = awaited && group != null ? group : begin(null, segment.first());
            pending.settle(taker);
            taker.sweep(segment.shots());
        }
    }

    private boolean belongs(Group group, Segment segment) {
        if (Restart.is(group.sweep(), segment.shots())) {
            return false;
        }
        // Where labels come last, a labelled stack is over, and what comes before the next label is of that.
        boolean over = slates == Slates.LAST
                && (group.stack() != null || !group.slates().isEmpty());
        boolean known = next == null ? ended : !(over && next == Segment.Kind.SLATE);
        return same.resumes(group.sweep(), segment.first(), over || pending.hasLabel())
                || known && same.patches(group.sweep(), segment.shots());
    }

    private void odd(Segment segment) {
        Group group = current;
        if (segment.isPicture() && group != null && belongs(group, segment)) {
            pending.settle(group);
            group.sweep(segment.shots());
        } else {
            pending.add(segment);
        }
    }

    private Group begin(@Nullable Long stack, Shot first) {
        Group before = current;
        if (before != null) {
            if (slates != Slates.LAST) {
                pending.adopt(before);
            }
            pending.nearest(before, first);
            before.close();
        }
        Group group = new Group(stack);
        groups.add(group);
        current = group;
        return group;
    }

    private Sorted sorted() {
        if (ended && !pending.isEmpty()) {
            Group group = current == null ? begin(null, pending.first().first()) : current;
            pending.adopt(group);
            pending.settle(group);
        }
        return new Sorted(
                groups.stream()
                        .filter(g -> g.stack() == null || !g.fresh().isEmpty())
                        .toList(),
                pending.shots());
    }
}
