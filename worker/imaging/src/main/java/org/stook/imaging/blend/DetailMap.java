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

    /** The map of a frame, half its size, rounded up. One thread. */
    public static Plane of(int width, int height, LumaRows luma) {
        Plane half = new Plane(Binomial.half(width), Binomial.half(height));
        HalvingRows halving = new HalvingRows(width, height);
        for (int y = halving.begin(0, half.height()); y < halving.end(); y++) {
            luma.read(y, halving.slot(y));
            while (halving.ready(y)) halving.take(half);
        }
        Plane detail = new Plane(half.width(), half.height());
        float[] fine = new float[width];
        float[] narrow = new float[half.width()];
        float[] wide = new float[width + 1];
        for (int y = halving.begin(0, half.height()); y < halving.end(); y++) {
            luma.read(y, fine);
            Binomial.expandRow(half, y, narrow, wide);
            float[] squares = halving.slot(y);
            for (int x = 0; x < squares.length; x++) {
                float d = fine[x] - wide[x];
                squares[x] = d * d;
            }
            while (halving.ready(y)) halving.take(detail);
        }
        return detail;
    }
}
