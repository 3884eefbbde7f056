package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** The running mix: the finest band by detail and claim together, everything coarser by the claim. */
final class RegionMix {
    private final Rows rows;
    private final Claims claims;
    private final RegionMaps maps;
    private final Frame fineSum;
    private final Plane fineWeight;
    private final Frame coarseSum;
    private final Plane coarseWeight;

    RegionMix(BlendPlan plan, Claims claims, RegionMaps maps, Rows rows) {
        int w = plan.width();
        int h = plan.height();
        this.rows = rows;
        this.claims = claims;
        this.maps = maps;
        this.fineSum = Frame.blank(w, h, plan.channels());
        this.fineWeight = new Plane(w, h);
        this.coarseSum = Frame.blank(Binomial.half(w), Binomial.half(h), plan.channels());
        this.coarseWeight = new Plane(Binomial.half(w), Binomial.half(h));
    }

    /** Folds a frame in, given also at half size, with its claim fitted to its edges. */
    void add(int frame, Frame fine, Frame half, GuidedFilter claim) {
        rows.runWith(half.height(), () -> {
            MixRows row = new MixRows(fine, half, claim);
            HalvingRows halving = new HalvingRows(fine.width(), fine.height());
            float[] narrow = new float[half.width()];
            return (from, to) -> {
                for (int y = halving.begin(from, to); y < halving.end(); y++) {
                    row.claim(y, halving.slot(y));
                    if (y >= 2 * from && y < 2 * to) row.mix(y, halving.slot(y), claims.near(), fineSum, fineWeight);
                    while (halving.ready(y)) {
                        int j = halving.take(narrow, 0);
                        mixCoarse(j, half, narrow);
                        maps.claim(frame, j, narrow);
                    }
                }
            };
        });
    }

    private void mixCoarse(int y, Frame half, float[] weight) {
        int at = y * weight.length;
        float[] total = coarseWeight.samples();
        for (int x = 0; x < weight.length; x++) total[at + x] += weight[x];
        for (int c = 0; c < half.channels(); c++) {
            float[] in = half.plane(c).samples();
            float[] out = coarseSum.plane(c).samples();
            for (int x = 0; x < weight.length; x++) out[at + x] += weight[x] * in[at + x];
        }
    }

    /** The composite; the accumulator itself, used up. */
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
