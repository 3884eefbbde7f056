package org.stook.imaging.blend;

import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** One stack going through {@link RegionBlend}. */
final class RegionFold implements Blend {
    /** Detail below this many times the noise tells no depth. */
    private static final float TELLING = 8;

    private final BlendPlan plan;
    private final Rows rows;
    private final RegionLearn learnt;
    private final Plane halfLuma;
    private @Nullable RegionRender render;

    RegionFold(BlendPlan plan) {
        this.plan = plan;
        this.rows = new Rows(plan.threads());
        this.learnt = new RegionLearn(plan, rows);
        this.halfLuma = new Plane(Binomial.half(plan.width()), Binomial.half(plan.height()));
    }

    @Override
    public int passes() {
        return 2;
    }

    @Override
    public boolean needsColour(int pass) {
        return pass > 0;
    }

    @Override
    public void add(int pass, int frame, Frame placed) {
        if (pass == 0) {
            Binomial.reduce(placed.luma(), halfLuma, rows);
            learnt.add(frame, placed, halfLuma);
        } else {
            rendering().add(frame, placed);
        }
    }

    private RegionRender rendering() {
        RegionRender known = render;
        if (known == null) {
            known = new RegionRender(plan, learnt, halfLuma, rows);
            render = known;
        }
        return known;
    }

    @Override
    public Blended finish() {
        RegionRender done = rendering();
        return new Blended(
                done.composite(),
                done.maps().source(),
                done.maps().depth(TELLING * learnt.noise().lowest()));
    }
}
