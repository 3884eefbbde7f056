package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** The running mix: the finest band by detail and claim together, everything coarser by the claim. */
final class RegionMix {
    /** Detail every frame is granted in the finest band, in units of noise energy. */
    private static final float RESERVE = 4;
    /** What detail alone can do against the claim: lets a bristle through that the region does not know of. */
    private static final float UNCLAIMED = 0.003f;
    /** Keeps a claim off zero, so that a pixel nobody claims is the mean of all. */
    private static final float LEAST = 1e-6f;

    private final Plane strongest;
    private final BandNoise noise;
    private final Rows rows;
    private final Frame fineSum;
    private final Plane fineWeight;
    private final Frame coarseSum;
    private final Plane coarseWeight;
    private final Plane claim;
    private final Plane halfClaim;

    RegionMix(BlendPlan plan, Plane strongest, BandNoise noise, Rows rows) {
        int w = plan.width();
        int h = plan.height();
        this.strongest = strongest;
        this.noise = noise;
        this.rows = rows;
        this.fineSum = Frame.blank(w, h, plan.channels());
        this.fineWeight = new Plane(w, h);
        this.coarseSum = Frame.blank(Binomial.half(w), Binomial.half(h), plan.channels());
        this.coarseWeight = new Plane(Binomial.half(w), Binomial.half(h));
        this.claim = new Plane(w, h);
        this.halfClaim = new Plane(Binomial.half(w), Binomial.half(h));
    }

    /** Folds a frame in. @return its weight at half size, valid until the next call */
    Plane add(Frame fine, Frame half, Plane detail, GuidedFilter fit) {
        rows.runWith(fine.height(), () -> {
            Lines lines = new Lines(fine.width(), half.width());
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    claimRow(y, fine, fit, lines);
                    weighRow(y, half, detail, lines);
                    for (int c = 0; c < fine.channels(); c++) mixRow(y, fine.plane(c), half.plane(c), c, lines);
                }
            };
        });
        Binomial.reduce(claim, halfClaim, rows);
        rows.run(halfClaim.height(), (from, to) -> mixCoarse(half, from, to));
        return halfClaim;
    }

    /** Buffers of one thread. */
    private static final class Lines {
        final float[] narrow;
        final float[] wide;
        final float[] other;
        final float[] weight;

        Lines(int width, int halfWidth) {
            narrow = new float[halfWidth];
            wide = new float[width + 1];
            other = new float[width + 1];
            weight = new float[width];
        }
    }

    private void claimRow(int y, Frame fine, GuidedFilter fit, Lines lines) {
        int w = claim.width();
        Binomial.expandRow(fit.slope(), y, w, lines.narrow, lines.wide);
        Binomial.expandRow(fit.offset(), y, w, lines.narrow, lines.other);
        float[] out = claim.samples();
        for (int x = 0; x < w; x++) {
            float v = lines.wide[x] * Luma.at(fine, y * w + x) + lines.other[x];
            v = Math.max(LEAST, Math.min(1, v));
            out[y * w + x] = v * v;
        }
    }

    private void weighRow(int y, Frame half, Plane detail, Lines lines) {
        int w = claim.width();
        noise.along(half, y, lines.other);
        float[] own = detail.samples();
        float[] top = strongest.samples();
        float[] total = fineWeight.samples();
        for (int x = 0; x < w; x++) {
            int i = y * w + x;
            float floor = lines.other[x];
            float r = (Math.max(0, own[i] - floor) + RESERVE * floor) / (Math.max(0, top[i] - floor) + RESERVE * floor);
            r *= r;
            lines.weight[x] = r * r * (claim.samples()[i] + UNCLAIMED);
            total[i] += lines.weight[x];
        }
    }

    private void mixRow(int y, Plane fine, Plane half, int channel, Lines lines) {
        int w = claim.width();
        Binomial.expandRow(half, y, w, lines.narrow, lines.wide);
        float[] in = fine.samples();
        float[] out = fineSum.plane(channel).samples();
        for (int x = 0; x < w; x++) {
            int i = y * w + x;
            out[i] += lines.weight[x] * (in[i] - lines.wide[x]);
        }
    }

    private void mixCoarse(Frame half, int from, int to) {
        int w = halfClaim.width();
        float[] weight = halfClaim.samples();
        for (int i = from * w; i < to * w; i++) coarseWeight.samples()[i] += weight[i];
        for (int c = 0; c < half.channels(); c++) {
            float[] in = half.plane(c).samples();
            float[] out = coarseSum.plane(c).samples();
            for (int i = from * w; i < to * w; i++) out[i] += weight[i] * in[i];
        }
    }

    /** The composite; the accumulators are used up. */
    Frame finish() {
        for (int c = 0; c < fineSum.channels(); c++) {
            divide(coarseSum.plane(c), coarseWeight);
            divide(fineSum.plane(c), fineWeight);
            Binomial.addExpanded(coarseSum.plane(c), fineSum.plane(c), rows);
        }
        return fineSum;
    }

    private void divide(Plane sum, Plane weight) {
        int w = sum.width();
        rows.run(sum.height(), (from, to) -> {
            for (int i = from * w; i < to * w; i++) sum.samples()[i] /= weight.samples()[i];
        });
    }
}
