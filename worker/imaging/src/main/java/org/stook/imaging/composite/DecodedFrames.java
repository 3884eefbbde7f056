package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.SampleArrays;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Samples;

/**
 * Decodes frames, and keeps them, so that the next stage need not decode them again: those that were looked at last in memory,
 * all of a small stack, two of large frames; older ones in a file as far as that may grow. The arrays of older ones serve the
 * next, and memory does not grow with the number of frames. Safe for several threads.
 */
final class DecodedFrames implements AutoCloseable {
    private static final long BUDGET_BYTES = 96L << 20;
    /** However large: while one frame is looked at, the next is decoded. */
    private static final int AT_LEAST = 2;

    private final SampleArrays arrays = new SampleArrays();
    private final Map<Path, Samples> lately = new LinkedHashMap<>();
    private final SpooledFrames older = new SpooledFrames();
    private int lent;

    /**
     * Lends a frame for its first look, until {@link #done}.
     *
     * @throws UnreadableFrame if the file is no frame, or a damaged one
     */
    Samples readOrRefuse(Path file) throws UnreadableFrame, IOException {
        return read(file, true);
    }

    /**
     * Lends a frame that was looked at before, until {@link #done}.
     *
     * @throws IOException also if the file can no longer be decoded: it was readable when it was surveyed
     */
    Samples read(Path file) throws IOException {
        try {
            return read(file, false);
        } catch (UnreadableFrame e) {
            throw new IOException("a frame changed since it was surveyed: " + e.getMessage(), e);
        }
    }

    /** @param again whether the frames that make room for it will be needed once more */
    private Samples read(Path file, boolean again) throws UnreadableFrame, IOException {
        Samples known = find(file);
        if (known != null) return known;
        boolean here = false;
        try {
            makeRoom(again);
            Samples spooled = older.read(file, arrays);
            Samples samples = spooled == null ? FrameReaders.read(file, arrays) : spooled;
            here = true;
            return samples;
        } finally {
            if (!here) letGo();
        }
    }

    /** Gives a frame back; its samples may change at once. */
    synchronized void done(Path file, Samples samples) {
        lent--;
        lately.put(file, samples);
    }

    /** Keeps nothing in memory any longer; what is lent is not touched. */
    synchronized void forget() {
        lately.clear();
        arrays.forget();
    }

    private synchronized @Nullable Samples find(Path file) {
        lent++;
        return lately.remove(file);
    }

    private synchronized void letGo() {
        lent--;
    }

    private void makeRoom(boolean again) {
        for (Map.Entry<Path, Samples> old = tooMany(); old != null; old = tooMany()) {
            if (again) older.keep(old.getKey(), old.getValue());
            arrays.giveBack(old.getValue());
        }
    }

    /** Takes out the oldest, if with it there are too many; they are taken to be of one size. */
    private synchronized Map.@Nullable Entry<Path, Samples> tooMany() {
        if (lately.isEmpty()) return null;
        Map.Entry<Path, Samples> oldest = lately.entrySet().iterator().next();
        int all = lately.size() + lent;
        if (all <= AT_LEAST || bytes(oldest.getValue()) * all <= BUDGET_BYTES) return null;
        lately.remove(oldest.getKey());
        return oldest;
    }

    private static long bytes(Samples samples) {
        return (long) samples.width() * samples.height() * samples.channels() * samples.bitsPerSample() / 8;
    }

    @Override
    public void close() {
        forget();
        older.close();
    }
}
