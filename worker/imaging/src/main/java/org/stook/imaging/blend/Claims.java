package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * A frame's claim to each region, 0 to 1, at half size: the mean over the neighbourhood of how near its detail comes to
 * the strongest of any frame, weighted by that strongest detail.
 */
final class Claims {
    /** Detail every frame is granted, in units of noise energy, so that noise does not decide. */
    private static final float RESERVE = 1;
    /** Detail that counts as none, in units of noise energy; not zero, so that bare regions have an average at all. */
    private static final float NONE = 1e-3f;

    private final Plane strongest;
    private final BandNoise noise;
    private final Rows rows;
    private final Neighbourhood neighbourhood;
    private final Plane full;
    private final Plane weight;
    private final Plane claim;
    private final Plane guide;
    private final GuidedFilter filter;
    private boolean weighted;

    Claims(Plane strongest, BandNoise noise, Rows rows) {
        int w = strongest.width();
        int h = strongest.height();
        this.strongest = strongest;
        this.noise = noise;
        this.rows = rows;
        this.neighbourhood = new Neighbourhood(w, h, rows);
        this.full = new Plane(w, h);
        this.weight = new Plane(Binomial.half(w), Binomial.half(h));
        this.claim = new Plane(Binomial.half(w), Binomial.half(h));
        this.guide = new Plane(Binomial.half(w), Binomial.half(h));
        this.filter = new GuidedFilter(guide.width(), guide.height(), rows);
    }

    /** The claim of a frame, fitted to its own edges. Only after the strongest detail of all frames is known. */
    GuidedFilter of(Frame half, Plane detail) {
        if (!weighted) {
            fill(half, detail, false);
            neighbourhood.average(full, weight);
            weighted = true;
        }
        fill(half, detail, true);
        neighbourhood.average(full, claim);
        float[] c = claim.samples();
        float[] w = weight.samples();
        rows.run(claim.height(), (from, to) -> {
            for (int i = from * claim.width(); i < to * claim.width(); i++) {
                c[i] = eighth(w[i] == 0 ? 1 : Math.min(1, c[i] / w[i]));
                guide.samples()[i] = Luma.at(half, i);
            }
        });
        filter.fit(guide, claim);
        return filter;
    }

    /** Weight of each pixel, times how near the frame comes to the strongest if {@code relative}. */
    private void fill(Frame half, Plane detail, boolean relative) {
        int w = full.width();
        rows.runWith(full.height(), () -> {
            float[] floor = new float[w];
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    noise.along(half, y, floor);
                    for (int x = 0; x < w; x++) {
                        int i = y * w + x;
                        float top = Math.max(0, strongest.samples()[i] - floor[x]);
                        float value = (float) Math.sqrt(Math.max(top, NONE * floor[x]));
                        if (relative) {
                            float own = Math.max(0, detail.samples()[i] - floor[x]);
                            value *= eighth((own + RESERVE * floor[x]) / (top + RESERVE * floor[x]));
                        }
                        full.samples()[i] = value;
                    }
                }
            };
        });
    }

    private static float eighth(float v) {
        float p = v * v;
        p *= p;
        return p * p;
    }
}
