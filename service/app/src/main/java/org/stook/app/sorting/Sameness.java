package org.stook.app.sorting;

import java.time.Duration;
import java.util.List;
import org.stook.app.station.StationSettings.Slates;
import org.stook.app.station.StationSettings.Splitting;

/** Whether shots belong to the same sweep, by a station's rules. */
final class Sameness {
    /** Thumbnails of one sweep correlate far better than this, thumbnails of two subjects mostly far worse. */
    private static final double ALIKE = 0.75;
    /** Something like a label on one of them only: they have to be so alike that texture was taken for print. */
    private static final double VERY_ALIKE = 0.92;
    /** Frames shot for a gap are fewer than this share of the sweep; more are a sweep of their own. */
    private static final double PATCH = 0.34;
    /** A code in so many alike frames is a label beside the subject, no slate. */
    private static final int LABELLED = 3;

    /** Nobody changes the subject within so short a time. */
    private static final Duration QUICK = Duration.ofSeconds(4);

    private final Splitting rules;

    Sameness(Splitting rules) {
        this.rules = rules;
    }

    /** Whether {@code next} may follow {@code shot} in one sweep. */
    boolean goesOn(Shot shot, Shot next) {
        return !isApart(shot, next)
                && sameSetting(shot, next)
                && alike(shot, next)
                && (sameInk(shot, next) || shot.likeness(next) >= VERY_ALIKE);
    }

    /** The same of any shot of a sweep; what lies between may have been something else. */
    boolean resumes(List<Shot> sweep, Shot next) {
        return resumes(sweep, next, false);
    }

    /** @param label whether a label was shot in between, or the stack is over: then the subject may be another one that looks alike */
    boolean resumes(List<Shot> sweep, Shot next, boolean label) {
        return sweep.stream().anyMatch(shot -> goesOn(shot, next) && !isCrossed(label, shot, next));
    }

    boolean isApart(Shot a, Shot b) {
        return pause(a, b).compareTo(rules.gap()) > 0;
    }

    boolean isCrossed(boolean label, Shot shot, Shot next) {
        return label && rules.slates() != Slates.NONE && pause(shot, next).compareTo(QUICK) > 0;
    }

    /** Whether these were shot afterwards to fill a gap of the sweep. */
    boolean patches(List<Shot> sweep, List<Shot> later) {
        if (sweep.size() < Segment.SHORTEST_SWEEP || later.size() > Math.max(1, PATCH * sweep.size())) {
            return false;
        }
        Shot last = sweep.get(sweep.size() - 1);
        return pause(last, later.get(0)).compareTo(Sorter.MOUNTED) <= 0
                && later.stream()
                        .allMatch(shot ->
                                sameSetting(last, shot) && sweep.stream().anyMatch(s -> alike(s, shot)));
    }

    private boolean sameSetting(Shot a, Shot b) {
        return a.setting().camera().equals(b.setting().camera())
                && a.setting().size().equals(b.setting().size())
                && (!rules.exposure()
                        || a.setting().exposure().equals(b.setting().exposure()));
    }

    private static boolean sameInk(Shot a, Shot b) {
        return (a.sight().unread() == 0) == (b.sight().unread() == 0);
    }

    private boolean alike(Shot a, Shot b) {
        return !rules.framing() || a.likeness(b) >= ALIKE;
    }

    static Duration pause(Shot a, Shot b) {
        return Duration.between(a.time(), b.time()).abs();
    }

    /** Whether it shows a label and nothing else: a code that its neighbours do not show in the same framing. */
    boolean isSlate(Shot shot, List<Shot> all) {
        if (shot.sight().codes().isEmpty()) {
            return false;
        }
        long beside = all.stream()
                .filter(other -> other.sight().codes().equals(shot.sight().codes()))
                .filter(other -> other.setting().size().equals(shot.setting().size()) && other.likeness(shot) >= ALIKE)
                .count();
        return beside < LABELLED;
    }
}
