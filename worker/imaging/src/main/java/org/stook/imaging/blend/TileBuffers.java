package org.stook.imaging.blend;

import org.stook.imaging.frame.Area;

/** What a thread needs to mix tiles of one size. */
final class TileBuffers {
    /** The frame, one picture a channel, luminance last. */
    final float[][][] drawn;
    /** Its channels at half size. */
    final float[][][] half;

    final float[][] claim;
    final float[] weight;
    final float[] wide;
    final float[] scratch;
    final float[] narrow;
    final float[] narrowScratch;

    TileBuffers(int width, int height, int channels) {
        int halfWidth = Binomial.half(width);
        drawn = new float[channels + 1][height][width];
        half = new float[channels][Binomial.half(height)][halfWidth];
        claim = new float[height][width];
        weight = new float[width];
        wide = new float[width];
        scratch = new float[width];
        narrow = new float[halfWidth];
        narrowScratch = new float[halfWidth];
    }

    boolean fit(Area area) {
        return claim.length == area.height() && weight.length == area.width();
    }

    float[][] luma() {
        return drawn[drawn.length - 1];
    }
}
