package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.FileStore;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.codec.SampleArrays;
import org.stook.imaging.frame.Samples;

/**
 * Decoded frames for which memory has no room, in a file without a name: to write one and read it back takes half of the time
 * that decoding it again does, and nothing of it need ever reach the disk where the system has memory to spare. So many large
 * frames as a common stack has, and no more. Safe for several threads, each with frames of its own.
 */
final class SpooledFrames implements AutoCloseable {
    /** Ten frames of 24 megapixels and some. */
    private static final long BUDGET_BYTES = 1L << 30;
    /** Leave so many times as much free for others. */
    private static final int PART = 4;
    /** File systems that are memory themselves, which is what is to be saved. */
    private static final Set<String> IN_MEMORY = Set.of("tmpfs", "ramfs");

    private final Map<Path, Kept> kept = new ConcurrentHashMap<>();
    private @Nullable Spool spool;
    private long left = -1;

    /** Where a frame lies, and how it is made of that again. */
    private interface Kept {
        Samples read(SampleArrays arrays) throws IOException;
    }

    /** Keeps a frame, if there is room and it has 8-bit samples; else it will have to be decoded again. */
    void keep(Path file, Samples samples) {
        if (kept.containsKey(file)) return;
        int width = samples.width();
        int height = samples.height();
        if (samples instanceof Samples.EightLumaChroma eight) {
            keep(file, eight.codes(), codes -> new Samples.EightLumaChroma(width, height, codes));
        } else if (samples instanceof Samples.Eight eight) {
            int channels = eight.channels();
            keep(file, eight.codes(), codes -> new Samples.Eight(width, height, channels, codes));
        }
    }

    private interface Kind {
        Samples of(byte[] codes);
    }

    private void keep(Path file, byte[] codes, Kind kind) {
        Spool into = roomFor(codes.length);
        if (into == null) return;
        try {
            int length = codes.length;
            long place = into.append(codes);
            kept.put(file, arrays -> {
                byte[] back = arrays.take(length);
                into.read(place, back);
                return kind.of(back);
            });
        } catch (IOException e) {
            full();
        }
    }

    /** The frame, if it was kept. */
    @Nullable
    Samples read(Path file, SampleArrays arrays) throws IOException {
        Kept place = kept.get(file);
        return place == null ? null : place.read(arrays);
    }

    private synchronized @Nullable Spool roomFor(long bytes) {
        try {
            if (left < 0) left = budget();
            if (left < bytes) return null;
            if (spool == null) spool = new Spool();
        } catch (IOException e) {
            full();
            return null;
        }
        left -= bytes;
        return spool;
    }

    private static long budget() throws IOException {
        FileStore disk = Files.getFileStore(Spool.folder());
        if (IN_MEMORY.contains(disk.type())) return 0;
        return Math.min(BUDGET_BYTES, disk.getUsableSpace() / PART);
    }

    /** No trouble: whatever is not kept is decoded again. */
    private synchronized void full() {
        left = 0;
    }

    @Override
    public synchronized void close() {
        kept.clear();
        if (spool != null) spool.close();
    }
}
