package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** The loops of {@link RegionMix} over rows of full size. One thread; its buffers are its own. */
final class MixRows {
    /** What detail alone can do against the claim: lets a bristle through that the region does not know of. */
    private static final float UNCLAIMED = 0.001f;
    /** Keeps a claim off zero, so that a pixel nobody claims is the mean of all. */
    private static final float LEAST = 1e-6f;

    private final Frame fine;
    private final Frame half;
    private final GuidedFilter fit;
    private final float[] narrow;
    private final float[] wide;
    private final float[] other;
    private final float[] weight;

    MixRows(Frame fine, Frame half, GuidedFilter fit) {
        this.fine = fine;
        this.half = half;
        this.fit = fit;
        this.narrow = new float[half.width()];
        this.wide = new float[fine.width() + 1];
        this.other = new float[fine.width() + 1];
        this.weight = new float[fine.width()];
    }

    /** The weight that the claim gives each pixel of row {@code y}. */
    void claim(int y, float[] out) {
        Binomial.expandRow(fit.slope(), y, narrow, wide);
        Binomial.expandRow(fit.offset(), y, narrow, other);
        Luma.row(fine, y, weight);
        for (int x = 0; x < weight.length; x++) {
            float v = Math.max(LEAST, Math.min(1, wide[x] * weight[x] + other[x]));
            float squared = v * v;
            out[x] = squared * squared;
        }
    }

    /** Adds the finest band of row {@code y}, weighted by claim and by how near its detail is to the strongest. */
    void mix(int y, float[] claim, Plane near, Frame sum, Plane total) {
        int w = weight.length;
        int at = y * w;
        Binomial.expandRow(near, y, narrow, wide);
        for (int x = 0; x < w; x++) weight[x] = wide[x] * wide[x] * (claim[x] + UNCLAIMED);
        float[] all = total.samples();
        for (int x = 0; x < w; x++) all[at + x] += weight[x];
        for (int c = 0; c < fine.channels(); c++) {
            Binomial.expandRow(half.plane(c), y, narrow, wide);
            float[] in = fine.plane(c).samples();
            float[] out = sum.plane(c).samples();
            for (int x = 0; x < w; x++) out[at + x] += weight[x] * (in[at + x] - wide[x]);
        }
    }
}
