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

    /** One thread's way of adding to the mix, tile by tile; no two threads may be given the same tile of a frame. */
    TileMix onTiles() {
        return new TileMix(new TileSums(fineSum, fineWeight, coarseSum, coarseWeight), claims, maps);
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
