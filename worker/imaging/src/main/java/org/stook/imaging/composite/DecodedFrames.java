package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;
import org.stook.imaging.codec.FrameReaders;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.imaging.frame.Samples;

/**
 * Decodes frames, and keeps the decoded samples of small stacks so that the stages do not decode them again. The budget
 * is fixed: memory does not grow with the number of frames.
 */
final class DecodedFrames {
    private static final long BUDGET_BYTES = 96L << 20;
    /** Frames of which only a few would fit are not worth the memory. */
    private static final int FEW = 8;

    private final Map<Path, Samples> kept = new LinkedHashMap<>();
    private long keptBytes;

    /** @throws IOException also if the file can no longer be decoded: it was readable when it was surveyed */
    Samples read(Path file) throws IOException {
        try {
            return readOrRefuse(file);
        } catch (UnreadableFrame e) {
            throw new IOException("a frame changed since it was surveyed: " + e.getMessage(), e);
        }
    }

    /** @throws UnreadableFrame if the file is no frame, or a damaged one */
    Samples readOrRefuse(Path file) throws UnreadableFrame, IOException {
        synchronized (kept) {
            Samples known = kept.get(file);
            if (known != null) return known;
        }
        Samples samples = FrameReaders.read(file);
        keep(file, samples);
        return samples;
    }

    void forget() {
        synchronized (kept) {
            kept.clear();
            keptBytes = 0;
        }
    }

    private void keep(Path file, Samples samples) {
        long bytes = (long) samples.width() * samples.height() * samples.channels() * samples.bitsPerSample() / 8;
        synchronized (kept) {
            // First come, first kept: every pass runs over all frames, so evicting would keep none.
            if (bytes * FEW > BUDGET_BYTES || keptBytes + bytes > BUDGET_BYTES || kept.containsKey(file)) return;
            kept.put(file, samples);
            keptBytes += bytes;
        }
    }
}
