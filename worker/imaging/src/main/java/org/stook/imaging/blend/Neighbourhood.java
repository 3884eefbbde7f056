package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * Averages a plane of a quarter of the size over two neighbourhoods at once: mostly a near one, which is what halving left
 * it smoothed by (a Gaussian of about 3 full-size pixels), and a little of a wide one (about 8) that carries where the near
 * one finds no detail at all.
 */
final class Neighbourhood {
    private static final float WIDE_SHARE = 0.1f;

    private final Rows rows;
    private final Plane coarse;

    Neighbourhood(int width, int height, Rows rows) {
        this.rows = rows;
        this.coarse = new Plane(Binomial.half(width), Binomial.half(height));
    }

    /** @param out another plane of the same size */
    void average(Plane in, Plane out) {
        System.arraycopy(in.samples(), 0, out.samples(), 0, in.width() * in.height());
        Binomial.reduce(in, coarse, rows);
        float[] samples = coarse.samples();
        for (int i = 0; i < samples.length; i++) samples[i] *= WIDE_SHARE;
        Binomial.addExpanded(coarse, out, rows);
    }
}
