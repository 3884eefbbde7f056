package org.stook.imaging.blend;

import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Plane;

/** One stack going through {@link RegionBlend}. */
final class RegionFold implements Blend {
    /** Detail below this many times the noise tells no depth. */
    private static final float TELLING = 8;

    private final BlendPlan plan;
    private final Rows rows;
    private final RegionLearn learnt;
    private final Plane detail;
    private final Plane guide;
    private @Nullable RegionRender render;

    RegionFold(BlendPlan plan) {
        this.plan = plan;
        this.rows = new Rows(plan.threads());
        this.detail = new Plane(Binomial.half(plan.width()), Binomial.half(plan.height()));
        this.guide = new Plane(Binomial.half(detail.width()), Binomial.half(detail.height()));
        this.learnt = new RegionLearn(detail.width(), detail.height(), rows);
    }

    @Override
    public int passes() {
        return 2;
    }

    @Override
    public boolean draws(int pass) {
        return pass > 0;
    }

    @Override
    public void begin(int pass) {
        if (pass > 0) rendering();
    }

    @Override
    public void add(int pass, int rank, BlendFrame frame) {
        frame.detail(detail);
        frame.guide(guide);
        if (pass == 0) learnt.add(rank, detail, guide);
        else rendering().add(rank, frame, detail, guide);
    }

    private RegionRender rendering() {
        RegionRender known = render;
        if (known == null) {
            learnt.settle(plan.frames());
            known = new RegionRender(plan, learnt, rows);
            render = known;
        }
        return known;
    }

    @Override
    public Blended finish() {
        RegionRender done = rendering();
        RegionMaps maps = done.maps();
        float least = TELLING * learnt.noise().lowest();
        return new Blended(done.composite(), maps::source, () -> maps.depth(least));
    }
}
