package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** The second pass: claims, and the mix they make. */
final class RegionRender {
    private final Rows rows;
    private final Frame half;
    private final Plane halfLuma;
    private final Claims claims;
    private final RegionMaps maps;
    private final RegionMix mix;

    /** @param halfLuma a plane of half size that nobody else needs now */
    RegionRender(BlendPlan plan, RegionLearn learnt, Plane halfLuma, Rows rows) {
        this.rows = rows;
        this.half = Frame.blank(halfLuma.width(), halfLuma.height(), plan.channels());
        this.halfLuma = halfLuma;
        this.claims = new Claims(learnt, rows);
        this.maps = new RegionMaps(plan, learnt.peak(), rows);
        this.mix = new RegionMix(plan, claims, maps, rows);
    }

    void add(int frame, Frame placed) {
        for (int c = 0; c < placed.channels(); c++) Binomial.reduce(placed.plane(c), half.plane(c), rows);
        rows.runWith(halfLuma.height(), () -> {
            float[] line = new float[halfLuma.width()];
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    Luma.row(half, y, line);
                    System.arraycopy(line, 0, halfLuma.samples(), y * line.length, line.length);
                }
            };
        });
        mix.add(frame, placed, half, claims.of(placed, halfLuma));
    }

    Frame composite() {
        return mix.finish();
    }

    RegionMaps maps() {
        return maps;
    }
}
