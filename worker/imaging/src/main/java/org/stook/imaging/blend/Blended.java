package org.stook.imaging.blend;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** What a blend gives. The maps, half as large as the composite in memory, are made when they are first asked for. */
public final class Blended {
    private final Frame composite;
    private final Supplier<short[]> source;
    private final Supplier<Plane> depth;
    private short @Nullable [] sourceMap;
    private @Nullable Plane depthMap;

    Blended(Frame composite, Supplier<short[]> source, Supplier<Plane> depth) {
        this.composite = composite;
        this.source = source;
        this.depth = depth;
    }

    /** Encoded values, same size and channels as the frames. */
    public Frame composite() {
        return composite;
    }

    /** Per pixel the rank of the frame that contributes most, row-major, unsigned 16 bit. The same array each time. */
    public synchronized short[] sourceMap() {
        short[] known = sourceMap;
        if (known == null) {
            known = source.get();
            sourceMap = known;
        }
        return known;
    }

    /**
     * Per pixel the sweep position with sub-frame precision, 0 to frames - 1; NaN where nothing decided it. The same plane each
     * time.
     */
    public synchronized Plane depthMap() {
        Plane known = depthMap;
        if (known == null) {
            known = depth.get();
            depthMap = known;
        }
        return known;
    }
}
