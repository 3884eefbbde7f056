package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Iterator;
import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.SampleArrays;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Samples;

/**
 * Decodes frames, and keeps those that were looked at last, so that the next stage need not decode them again: all of a small
 * stack, two of large frames. The arrays of older ones serve the next, and memory does not grow with the number of frames.
 * Safe for several threads.
 */
final class DecodedFrames {
    private static final long BUDGET_BYTES = 96L << 20;
    /** However large: while one frame is looked at, the next is decoded. */
    private static final int AT_LEAST = 2;

    private final SampleArrays arrays = new SampleArrays();
    private final Map<Path, Samples> lately = new LinkedHashMap<>();
    private int lent;

    /**
     * Lends a frame, until {@link #done}.
     *
     * @throws IOException also if the file can no longer be decoded: it was readable when it was surveyed
     */
    Samples read(Path file) throws IOException {
        try {
            return readOrRefuse(file);
        } catch (UnreadableFrame e) {
            throw new IOException("a frame changed since it was surveyed: " + e.getMessage(), e);
        }
    }

    /** @throws UnreadableFrame if the file is no frame, or a damaged one */
    Samples readOrRefuse(Path file) throws UnreadableFrame, IOException {
        Samples known = find(file);
        if (known != null) return known;
        boolean decoded = false;
        try {
            Samples samples = FrameReaders.read(file, arrays);
            decoded = true;
            return samples;
        } finally {
            if (!decoded) letGo();
        }
    }

    /** Gives a frame back; its samples may change at once. */
    synchronized void done(Path file, Samples samples) {
        lent--;
        lately.put(file, samples);
    }

    /** Keeps nothing any longer; what is lent is not touched. */
    synchronized void forget() {
        lately.clear();
        arrays.forget();
    }

    private synchronized @Nullable Samples find(Path file) {
        Samples known = lately.remove(file);
        lent++;
        if (known == null) makeRoom();
        return known;
    }

    private synchronized void letGo() {
        lent--;
    }

    /** For one more frame, taken to be as large as those before. */
    private void makeRoom() {
        while (!lately.isEmpty()) {
            long each = bytes(lately.values().iterator().next());
            int all = lately.size() + lent;
            if (all <= AT_LEAST || each * all <= BUDGET_BYTES) return;
            reuseOldest();
        }
    }

    private void reuseOldest() {
        Iterator<Samples> oldest = lately.values().iterator();
        arrays.giveBack(oldest.next());
        oldest.remove();
    }

    private static long bytes(Samples samples) {
        return (long) samples.width() * samples.height() * samples.channels() * samples.bitsPerSample() / 8;
    }
}
