package org.stook.imaging.registration;

import java.io.IOException;
import java.util.BitSet;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.OneAhead;

/**
 * Finds the placement of every frame of a sweep against one of them.
 *
 * <p>Each frame is matched with the three before it, tile by tile; all matches together then give all placements at once.
 * Frames are read once, in order, the next while one is matched, and only five are kept.
 */
public final class Registrar {
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
        PairSearch search = new PairSearch(coordinates, threads);
        BitSet blank = new BitSet();
        OneAhead.Maker<FrameLevels> read = frame -> FrameLevels.read(source, frame);
        try (OneAhead<FrameLevels> frames = new OneAhead<>(source.frames(), threads, read)) {
            for (int frame = 0; frame < source.frames(); frame++) {
                FrameLevels levels = frames.next();
                blank.set(frame, levels.isBlank());
                search.add(levels);
            }
        }
        return new Settlement(source.frames(), reference, coordinates, threads).settle(search.found(), blank);
    }
}
