package org.stook.imaging.registration;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.registration.PairAligner.PairFound;

/** Goes along the sweep and matches every frame with the few before it. */
final class PairSearch {
    /** How far back in the sweep frames are matched. */
    private static final int SPAN = 3;

    /** Pairs with less support are not believed. */
    private static final double LEAST_SUPPORT = 0.25;

    private final int threads;
    private final PairAligner aligner;
    /** One of several at a time. */
    private final PairAligner besideOthers;

    private final FeatureGuess features;
    private final List<PairFound> found = new ArrayList<>();
    /** The frames before the one that comes next, nearest first. */
    private final Deque<FrameLevels> window = new ArrayDeque<>();
    /** From the frames of the window but the nearest, to the nearest; normal coordinates. */
    private List<Placement> toNearest = List.of();

    private Placement lastStep = Placement.identity();

    PairSearch(Coordinates coordinates, int threads) {
        this.threads = threads;
        this.aligner = new PairAligner(coordinates, threads);
        this.besideOthers = new PairAligner(coordinates, Math.max(1, threads / (SPAN - 1)));
        this.features = new FeatureGuess(coordinates);
    }

    /** Pairs that hold, in the order in which they were found. */
    List<PairFound> found() {
        return List.copyOf(found);
    }

    /** Matches the next frame of the sweep with those before it. */
    void add(FrameLevels newest) {
        List<FrameLevels> earlier = List.copyOf(window);
        List<Optional<PairFound>> pairs = new ArrayList<>();
        while (pairs.size() < earlier.size() && pairs.stream().allMatch(Optional::isEmpty)) {
            pairs.add(search(earlier.get(pairs.size()), newest));
            if (pairs.size() == 1) pairs.get(0).ifPresent(pair -> lastStep = pair.map());
        }
        pairs.addAll(searchBeyond(pairs, earlier, newest));
        pairs.forEach(pair -> pair.ifPresent(found::add));
        toNearest = pairs.stream().map(this::mapOrStep).toList();
        window.addFirst(newest);
        if (window.size() > SPAN) window.removeLast();
    }

    /** The frames beyond the nearest one that could be matched, side by side: by way of that one there is a guess for each. */
    private List<Optional<PairFound>> searchBeyond(
            List<Optional<PairFound>> nearer, List<FrameLevels> earlier, FrameLevels newest) {
        int first = nearer.size();
        if (first == earlier.size()) return List.of();
        int anchor = first - 1;
        Placement fromAnchor = mapOrStep(nearer.get(anchor));
        PairFound[] pairs = new PairFound[earlier.size() - first];
        Parallel.forEach(pairs.length, threads, i -> {
            Placement guess = toAnchor(anchor, first + i).then(fromAnchor);
            pairs[i] = besideOthers.align(earlier.get(first + i), newest, guess);
        });
        return Arrays.stream(pairs).map(PairSearch::believed).toList();
    }

    private Placement mapOrStep(Optional<PairFound> pair) {
        return pair.map(PairFound::map).orElse(lastStep);
    }

    /** From a frame farther back to the anchor. */
    private Placement toAnchor(int anchor, int back) {
        Placement toNewestBefore = toNearest.get(back - 1);
        return anchor > 0 ? toNewestBefore.then(toNearest.get(anchor - 1).inverse()) : toNewestBefore;
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
