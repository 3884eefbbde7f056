package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * How much detail a frame shows where: energy of the finest Laplacian band of its luminance, smoothed by the 5 x 5 binomial
 * kernel as it is halved. Sample i lies at pixel 2 i.
 *
 * <p>It is taken from the frame as it was decoded. So it costs no decoding of its own, no resampling has touched it, and
 * no change of tones ever changes which frame is chosen where.
 */
public final class DetailMap {
    private DetailMap() {}

    /** Rows of luminance that are kept until the half-size rows around them are made; a power of 2. */
    private static final int KEPT = 8;

    /** The map of a frame, half its size, rounded up. One thread; each row is read once, from above to below. */
    public static Plane of(int width, int height, LumaRows luma) {
        Plane half = new Plane(Binomial.half(width), Binomial.half(height));
        HalvingRows halving = new HalvingRows(width, height);
        Squares squares = new Squares(half, width, height);
        float[][] kept = new float[KEPT][width];
        halving.begin(0, half.height());
        int made = 0;
        int squared = 0;
        for (int y = 0; y < height; y++) {
            float[] row = kept[y % KEPT];
            luma.read(y, row);
            System.arraycopy(row, 0, halving.slot(y), 0, width);
            for (; halving.ready(y); made++) halving.take(half);
            // A row is enlarged from the half-size rows beside it and the one below.
            for (; squared <= y && (squared / 2 + 1 < made || made == half.height()); squared++) {
                squares.add(squared, kept[squared % KEPT]);
            }
        }
        return squares.detail;
    }

    /** The energy of the band, halved as it comes. */
    private static final class Squares {
        private final Plane half;
        private final HalvingRows halving;
        private final float[] narrow;
        private final float[] wide;
        final Plane detail;

        Squares(Plane half, int width, int height) {
            this.half = half;
            this.halving = new HalvingRows(width, height);
            this.narrow = new float[half.width()];
            this.wide = new float[width + 1];
            this.detail = new Plane(half.width(), half.height());
            halving.begin(0, half.height());
        }

        void add(int y, float[] luma) {
            Binomial.expandRow(half, y, narrow, wide);
            float[] squares = halving.slot(y);
            for (int x = 0; x < squares.length; x++) {
                float d = luma[x] - wide[x];
                squares[x] = d * d;
            }
            while (halving.ready(y)) halving.take(detail);
        }
    }
}
