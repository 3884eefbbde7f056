package org.stook.imaging.blend;

import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.Plane;

/**
 * Averages a plane of half size over two neighbourhoods at once: mostly a near one (a Gaussian of about 3 full-size
 * pixels), and a little of a wide one (about 8) that carries where the near one finds no detail at all.
 */
final class Neighbourhood {
    private static final float WIDE_SHARE = 0.1f;
    private static final int DEPTH = 2;

    private final Rows rows;
    private final List<Plane> levels = new ArrayList<>();

    Neighbourhood(int width, int height, Rows rows) {
        this.rows = rows;
        int w = width;
        int h = height;
        for (int i = 0; i < DEPTH; i++) {
            w = Binomial.half(w);
            h = Binomial.half(h);
            levels.add(new Plane(w, h));
        }
    }

    /** @param out another plane of the same size */
    void average(Plane in, Plane out) {
        Binomial.smooth(in, out, rows);
        Plane fine = in;
        for (Plane coarse : levels) {
            Binomial.reduce(fine, coarse, rows);
            fine = coarse;
        }
        scale(fine);
        for (int i = DEPTH - 2; i >= 0; i--) {
            Binomial.expand(fine, levels.get(i), rows);
            fine = levels.get(i);
        }
        Binomial.addExpanded(fine, out, rows);
    }

    private static void scale(Plane plane) {
        float[] samples = plane.samples();
        for (int i = 0; i < samples.length; i++) samples[i] *= WIDE_SHARE;
    }
}
