package org.stook.imaging.composite.view;

import java.nio.file.Path;

/**
 * What all sizes of a tiled picture share.
 *
 * @param width of the whole picture, pixels
 * @param threads how many may be used
 */
record TilePlan(Path folder, int width, int height, int channels, int threads) {
    /** Pixels along the side of a tile. */
    static final int TILE = 512;

    /** Extent of the picture at that scale, a begun pixel counting as one. */
    int reduced(int extent, int scale) {
        return (extent + scale - 1) / scale;
    }

    /** The scale at which the picture fits into one tile. */
    int largestScale() {
        int scale = 1;
        while (reduced(Math.max(width, height), scale) > TILE) scale *= 2;
        return scale;
    }
}
