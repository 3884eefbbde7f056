package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;

/**
 * Luminance of frames at the small size that survey and registration look at, so that one decoding serves both. Kept
 * within a fixed budget and worked out again beyond it; rounded to 16 bit either way, so that what is kept makes no
 * difference to the result.
 */
final class SmallLumas {
    /** Long side of what registration wants at most. */
    private static final int LONG_SIDE = 3200;

    private static final long BUDGET_BYTES = 256L << 20;
    private static final float WHITE = 65535;

    private final DecodedFrames frames;
    private final Map<Path, short[]> kept = new ConcurrentHashMap<>();
    private final AtomicLong keptBytes = new AtomicLong();

    SmallLumas(DecodedFrames frames) {
        this.frames = frames;
    }

    /** The whole factor by which frames of that size are reduced. */
    static int reduction(int width, int height) {
        int reduction = 1;
        while (Math.max(width, height) / reduction > LONG_SIDE) reduction *= 2;
        return reduction;
    }

    /** Luminance of a frame that was just decoded. */
    Plane of(Path file, Samples samples) {
        short[] codes = codes(samples);
        long bytes = 2L * codes.length;
        if (keptBytes.addAndGet(bytes) <= BUDGET_BYTES) kept.put(file, codes);
        else keptBytes.addAndGet(-bytes);
        return plane(codes, samples.width(), samples.height());
    }

    /** Luminance of a frame that was surveyed. */
    Plane of(Path file, int width, int height) throws IOException {
        short[] codes = kept.get(file);
        return plane(codes == null ? codes(frames.read(file)) : codes, width, height);
    }

    void forget() {
        kept.clear();
    }

    private static short[] codes(Samples samples) {
        Plane luma = Luma.of(samples, reduction(samples.width(), samples.height()));
        short[] codes = new short[luma.width() * luma.height()];
        float[] values = luma.samples();
        for (int i = 0; i < codes.length; i++) codes[i] = (short) (int) (values[i] * WHITE + 0.5f);
        return codes;
    }

    private static Plane plane(short[] codes, int width, int height) {
        int n = reduction(width, height);
        Plane plane = new Plane(width / n, height / n);
        float[] out = plane.samples();
        for (int i = 0; i < codes.length; i++) out[i] = (codes[i] & 0xFFFF) / WHITE;
        return plane;
    }
}
