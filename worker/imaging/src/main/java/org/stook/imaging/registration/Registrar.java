package org.stook.imaging.registration;

import java.io.IOException;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Placement;

/**
 * Finds the placement of every frame of a sweep against one of them.
 *
 * <p>Each frame is matched with the three before it, tile by tile; all matches together then give all placements at once.
 * Frames are read once, in order, and only four are kept.
 */
public final class Registrar {
    /** How far back in the sweep frames are matched. */
    private static final int SPAN = 3;

    /** Pairs with less support are not believed. */
    private static final double LEAST_SUPPORT = 0.25;

    private final int threads;

    /** @param threads how many threads may be used, at least 1; the result does not depend on it */
    public Registrar(int threads) {
        if (threads < 1) throw new IllegalArgumentException("threads must be at least 1, got " + threads);
        this.threads = threads;
    }

    /**
     * Registers a sweep.
     *
     * @param source the frames in sweep order
     * @param reference index of the frame whose placement is to be the identity
     * @throws IOException when a frame cannot be read
     */
    public Registration register(LumaSource source, int reference) throws IOException {
        if (reference < 0 || reference >= source.frames()) {
            throw new IllegalArgumentException(
                    "reference must be 0 to %d, got %d".formatted(source.frames() - 1, reference));
        }
        Coordinates coordinates = new Coordinates(source.width(), source.height());
        return new Settlement(source.frames(), reference, coordinates).settle(collect(source, coordinates));
    }

    private List<PairAligner.PairFound> collect(LumaSource source, Coordinates coordinates) throws IOException {
        PairAligner aligner = new PairAligner(coordinates, threads);
        List<PairAligner.PairFound> all = new ArrayList<>();
        Deque<FrameLevels> window = new ArrayDeque<>();
        // Maps from the frames of the window, nearest first, to the newest one.
        List<Placement> maps = new ArrayList<>();
        Placement lastStep = Placement.identity();
        for (int frame = 0; frame < source.frames(); frame++) {
            FrameLevels newest = FrameLevels.read(source, frame);
            List<Placement> next = new ArrayList<>();
            int back = 0;
            boolean chained = false;
            for (FrameLevels earlier : window) {
                Placement guess = chained ? maps.get(back - 1).then(next.get(0)) : lastStep;
                PairAligner.PairFound found = aligner.align(earlier, newest, guess);
                boolean good = found.support() >= LEAST_SUPPORT;
                if (good) all.add(found);
                if (back == 0) chained = good;
                if (back == 0 && good) lastStep = found.map();
                next.add(good ? found.map() : guess);
                back++;
            }
            maps = next;
            window.addFirst(newest);
            if (window.size() > SPAN) window.removeLast();
        }
        return Collections.unmodifiableList(all);
    }
}
