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
        if (stored instanceof Samples.Eight eight) {
            byte[] out = new byte[eight.codes().length];
            for (int y = 0, i = 0; y < height; y++) {
                for (int x = 0; x < width; x++) {
                    int from = source(orientation, x, y, stored.width(), stored.height()) * channels;
                    for (int c = 0; c < channels; c++) out[i++] = eight.codes()[from + c];
                }
            }
            return new Samples.Eight(width, height, channels, out);
        }
        short[] in = ((Samples.Sixteen) stored).codes();
        short[] out = new short[in.length];
        for (int y = 0, i = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int from = source(orientation, x, y, stored.width(), stored.height()) * channels;
                for (int c = 0; c < channels; c++) out[i++] = in[from + c];
            }
        }
        return new Samples.Sixteen(width, height, channels, out);
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
