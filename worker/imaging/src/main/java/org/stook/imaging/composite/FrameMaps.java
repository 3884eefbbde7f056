package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.stook.imaging.blend.DetailMap;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Samples;

/**
 * Reduced pictures of every frame, made from its first decoding and spooled: its luminance at the small size that survey and
 * registration look at, and its detail at half size, by which the blend decides. Both rounded to 16 bit.
 */
final class FrameMaps implements AutoCloseable {
    /** Long side of what registration wants at most. */
    private static final int LONG_SIDE = 3200;

    private static final float WHITE = 65535;
    /** Detail keeps sign, exponent and seven bits of mantissa: steps of half a per cent. */
    private static final int DROPPED_BITS = 16;

    private final Spool spool;
    private final Map<Path, Kept> kept = new ConcurrentHashMap<>();

    FrameMaps() throws IOException {
        this.spool = new Spool();
    }

    private record Kept(int width, int height, Spool.Place luma, Spool.Place detail) {}

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
        Plane detail = DetailMap.of(width, height, (y, out) -> {
            samples.luma(y, 0, out);
            small.add(y, out);
        });
        short[] luma = codes(small.plane());
        kept.put(file, new Kept(width, height, spool.write(luma), spool.write(halfFloats(detail))));
        return luma(luma, width, height);
    }

    /** Small luminance of a frame whose maps were made. */
    Plane luma(Path file) throws IOException {
        Kept maps = of(file);
        return luma(spool.read(maps.luma), maps.width, maps.height);
    }

    /** Detail of a frame whose maps were made, times {@code factor}. */
    Plane detail(Path file, float factor) throws IOException {
        Kept maps = of(file);
        short[] codes = spool.read(maps.detail);
        Plane plane = new Plane((maps.width + 1) / 2, (maps.height + 1) / 2);
        float[] out = plane.samples();
        for (int i = 0; i < codes.length; i++) out[i] = Float.intBitsToFloat(codes[i] << DROPPED_BITS) * factor;
        return plane;
    }

    private Kept of(Path file) {
        Kept maps = kept.get(file);
        if (maps == null) throw new IllegalStateException(file + " was not surveyed");
        return maps;
    }

    private static short[] codes(Plane luma) {
        short[] codes = new short[luma.width() * luma.height()];
        float[] values = luma.samples();
        for (int i = 0; i < codes.length; i++) codes[i] = (short) (int) (values[i] * WHITE + 0.5f);
        return codes;
    }

    private static Plane luma(short[] codes, int width, int height) {
        int n = reduction(width, height);
        Plane plane = new Plane(width / n, height / n);
        float[] out = plane.samples();
        for (int i = 0; i < codes.length; i++) out[i] = (codes[i] & 0xFFFF) * (1 / WHITE);
        return plane;
    }

    private static short[] halfFloats(Plane plane) {
        short[] codes = new short[plane.width() * plane.height()];
        float[] values = plane.samples();
        for (int i = 0; i < codes.length; i++) {
            codes[i] = (short) (Float.floatToRawIntBits(values[i]) >>> DROPPED_BITS);
        }
        return codes;
    }

    @Override
    public void close() throws IOException {
        spool.close();
    }
}
