package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** One stack going through {@link RegionBlend}. */
final class RegionFold implements Blend {
    private final BlendPlan plan;
    private final Rows rows;
    private final Frame half;
    private final DetailMap details;
    private final Plane strongest;
    private final BandNoise noise = new BandNoise();
    private final RegionMaps maps;
    private final Claims claims;
    private final RegionMix mix;

    RegionFold(BlendPlan plan) {
        this.plan = plan;
        this.rows = new Rows(plan.threads());
        int w = plan.width();
        int h = plan.height();
        this.half = Frame.blank(Binomial.half(w), Binomial.half(h), plan.channels());
        this.details = new DetailMap(w, h, rows);
        this.strongest = new Plane(w, h);
        this.maps = new RegionMaps(plan, rows);
        this.claims = new Claims(strongest, noise, rows);
        this.mix = new RegionMix(plan, strongest, noise, rows);
    }

    @Override
    public int passes() {
        return 2;
    }

    @Override
    public void add(int pass, int frame, Frame placed) {
        for (int c = 0; c < placed.channels(); c++) Binomial.reduce(placed.plane(c), half.plane(c), rows);
        Plane detail = details.of(placed, half);
        if (pass == 0) {
            noise.learn(placed, half);
            keepStrongest(detail);
            maps.learn(frame, detail);
        } else {
            GuidedFilter fit = claims.of(half, detail);
            Plane weight = mix.add(placed, half, detail, fit);
            maps.claim(frame, weight);
        }
    }

    private void keepStrongest(Plane detail) {
        float[] now = detail.samples();
        float[] best = strongest.samples();
        int width = strongest.width();
        rows.run(strongest.height(), (from, to) -> {
            for (int i = from * width; i < to * width; i++) best[i] = Math.max(best[i], now[i]);
        });
    }

    @Override
    public Blended finish() {
        Plane depth = new Plane(plan.width(), plan.height());
        maps.depth(depth, 8 * noise.lowest());
        return new Blended(mix.finish(), maps.source(), depth);
    }
}
