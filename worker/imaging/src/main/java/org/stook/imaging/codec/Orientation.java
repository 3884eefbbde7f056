package org.stook.imaging.codec;

import org.stook.imaging.frame.Samples;

/**
 * Exif orientation (tag 0x0112, Exif 3.0 / TIFF 6.0): where row 0 and column 0 of the stored picture lie when it is
 * looked at upright. 1 needs nothing, 5 to 8 swap width and height.
 */
final class Orientation {
    private Orientation() {}

    static boolean swapsSides(int orientation) {
        return orientation >= 5 && orientation <= 8;
    }

    /** The upright picture; {@code stored} itself if nothing has to be done. */
    static Samples upright(Samples stored, int orientation) {
        if (orientation < 2 || orientation > 8) return stored;
        int width = swapsSides(orientation) ? stored.height() : stored.width();
        int height = swapsSides(orientation) ? stored.width() : stored.height();
        int channels = stored.channels();
        if (stored instanceof Samples.Sixteen sixteen) {
            short[] in = sixteen.codes();
            short[] out = new short[in.length];
            each(stored, orientation, width, (from, to) -> out[to] = in[from]);
            return new Samples.Sixteen(width, height, channels, out);
        }
        boolean lumaChroma = stored instanceof Samples.EightLumaChroma;
        byte[] in = lumaChroma ? ((Samples.EightLumaChroma) stored).codes() : ((Samples.Eight) stored).codes();
        byte[] out = new byte[in.length];
        each(stored, orientation, width, (from, to) -> out[to] = in[from]);
        return lumaChroma
                ? new Samples.EightLumaChroma(width, height, out)
                : new Samples.Eight(width, height, channels, out);
    }

    /** Where a sample comes from and where it goes, both as indices of codes. */
    private interface Move {
        void sample(int from, int to);
    }

    /** @param width of the upright picture */
    private static void each(Samples stored, int orientation, int width, Move move) {
        int channels = stored.channels();
        int pixels = stored.width() * stored.height();
        for (int i = 0, to = 0; i < pixels; i++) {
            int from = source(orientation, i % width, i / width, stored.width(), stored.height()) * channels;
            for (int c = 0; c < channels; c++) move.sample(from + c, to++);
        }
    }

    /** Index of the stored pixel that is seen at (x, y) upright; w and h are the stored sides. */
    private static int source(int orientation, int x, int y, int w, int h) {
        return switch (orientation) {
            case 2 -> y * w + (w - 1 - x);
            case 3 -> (h - 1 - y) * w + (w - 1 - x);
            case 4 -> (h - 1 - y) * w + x;
            case 5 -> x * w + y;
            case 6 -> (h - 1 - x) * w + y;
            case 7 -> (h - 1 - x) * w + (w - 1 - y);
            default -> x * w + (w - 1 - y);
        };
    }
}
