package org.stook.scenes.bracket;

/** Sets of pixels. */
final class Masks {
    private Masks() {}

    /** All pixels within a square of this reach about a set pixel. */
    static boolean[] dilated(boolean[] mask, int width, int reach) {
        int height = mask.length / width;
        boolean[] across = new boolean[mask.length];
        for (int y = 0; y < height; y++) widen(mask, across, y * width, 1, width, reach);
        boolean[] both = new boolean[mask.length];
        for (int x = 0; x < width; x++) widen(across, both, x, width, height, reach);
        return both;
    }

    private static void widen(boolean[] from, boolean[] to, int start, int stride, int count, int reach) {
        int until = -1;
        for (int i = 0; i < count + reach; i++) {
            if (i < count && from[start + i * stride]) until = i + 2 * reach;
            if (i >= reach && i <= until) to[start + (i - reach) * stride] = true;
        }
    }
}
