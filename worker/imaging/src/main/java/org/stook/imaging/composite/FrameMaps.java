package org.stook.imaging.composite;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.stook.imaging.blend.DetailMap;
import org.stook.imaging.blend.LumaRows;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;

/**
 * Reduced pictures of every frame, made from its first decoding and spooled: its luminance at the small size that survey and
 * registration look at, and its detail at half size, by which the blend decides. Both rounded to 16 bit.
 */
final class FrameMaps implements AutoCloseable {
    /** Long side of what registration wants at most. */
    private static final int LONG_SIDE = 2400;

    private final Spool spool;
    private final Map<Path, Kept> kept = new ConcurrentHashMap<>();

    FrameMaps() throws IOException {
        this.spool = new Spool();
    }

    private record Kept(SpooledPlane luma, SpooledPlane detail) {}

    /** The whole factor by which luminance of frames of that size is reduced. */
    static int reduction(int width, int height) {
        int reduction = 1;
        while (Math.max(width, height) / reduction > LONG_SIDE) reduction *= 2;
        return reduction;
    }

    /** Makes the maps of a frame that was just decoded. @return its small luminance */
    Plane make(Path file, Samples samples) throws IOException {
        int width = samples.width();
        int height = samples.height();
        ReducedLuma small = new ReducedLuma(width, height, reduction(width, height));
        SpooledPlane.Writer detail =
                new SpooledPlane.Writer(spool, (width + 1) / 2, (height + 1) / 2, SpooledPlane.Coding.RELATIVE);
        LumaRows rows = (y, even, odd) -> {
            samples.lumaApart(y, even, odd);
            small.add(y, even, odd);
        };
        try {
            DetailMap.of(width, height, rows, (y, row) -> detail.row(row));
            Kept made = new Kept(write(small.plane()), detail.finish());
            kept.put(file, made);
            return made.luma.read();
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
    }

    private SpooledPlane write(Plane luma) {
        SpooledPlane.Writer writer =
                new SpooledPlane.Writer(spool, luma.width(), luma.height(), SpooledPlane.Coding.EVEN);
        float[] row = new float[luma.width()];
        for (int y = 0; y < luma.height(); y++) {
            System.arraycopy(luma.samples(), y * row.length, row, 0, row.length);
            writer.row(row);
        }
        return writer.finish();
    }

    /** Small luminance of a frame whose maps were made. */
    SpooledPlane luma(Path file) {
        return of(file).luma;
    }

    /** Detail of a frame whose maps were made. */
    SpooledPlane detail(Path file) {
        return of(file).detail;
    }

    private Kept of(Path file) {
        Kept maps = kept.get(file);
        if (maps == null) throw new IllegalStateException(file + " was not surveyed");
        return maps;
    }

    @Override
    public void close() {
        spool.close();
    }
}
