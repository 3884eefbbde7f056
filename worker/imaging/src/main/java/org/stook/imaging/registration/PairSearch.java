package org.stook.imaging.registration;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.registration.PairAligner.PairFound;

/** Goes along the sweep and matches every frame with the few before it. */
final class PairSearch {
    /** How far back in the sweep frames are matched. */
    private static final int SPAN = 3;

    /** Pairs with less support are not believed. */
    private static final double LEAST_SUPPORT = 0.25;

    private final PairAligner aligner;
    private final FeatureGuess features;
    private final List<PairFound> found = new ArrayList<>();
    /** The frames before the one that comes next, nearest first. */
    private final Deque<FrameLevels> window = new ArrayDeque<>();
    /** From the frames of the window but the nearest, to the nearest; normal coordinates. */
    private List<Placement> toNearest = List.of();

    private Placement lastStep = Placement.identity();

    PairSearch(Coordinates coordinates, int threads) {
        this.aligner = new PairAligner(coordinates, threads);
        this.features = new FeatureGuess(coordinates);
    }

    /** Pairs that hold, in the order in which they were found. */
    List<PairFound> found() {
        return List.copyOf(found);
    }

    /** Matches the next frame of the sweep with those before it. */
    void add(FrameLevels newest) {
        List<Placement> maps = new ArrayList<>();
        int anchor = -1;
        for (FrameLevels earlier : window) {
            int back = maps.size();
            Optional<PairFound> pair = anchor < 0
                    ? search(earlier, newest)
                    : believed(aligner.align(earlier, newest, through(anchor, back, maps)));
            if (pair.isPresent() && anchor < 0) anchor = back;
            if (pair.isPresent() && back == 0) lastStep = pair.get().map();
            maps.add(pair.map(PairFound::map).orElse(lastStep));
            pair.ifPresent(found::add);
        }
        toNearest = maps;
        window.addFirst(newest);
        if (window.size() > SPAN) window.removeLast();
    }

    /** The guess for a frame farther back, by way of the nearest one that could be matched. */
    private Placement through(int anchor, int back, List<Placement> maps) {
        Placement toAnchor = toNearest.get(back - 1);
        if (anchor > 0) toAnchor = toAnchor.then(toNearest.get(anchor - 1).inverse());
        return toAnchor.then(maps.get(anchor));
    }

    /** From the step before, as sweeps are even; failing that from features, as if nothing were known. */
    private Optional<PairFound> search(FrameLevels earlier, FrameLevels newest) {
        Optional<PairFound> pair = believed(aligner.align(earlier, newest, lastStep));
        if (pair.isPresent()) return pair;
        return features.between(earlier, newest).flatMap(guess -> believed(aligner.align(earlier, newest, guess)));
    }

    private static Optional<PairFound> believed(PairFound pair) {
        return pair.support() >= LEAST_SUPPORT ? Optional.of(pair) : Optional.empty();
    }
}
