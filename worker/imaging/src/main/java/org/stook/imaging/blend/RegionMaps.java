package org.stook.imaging.blend;

import java.util.Arrays;
import org.stook.imaging.frame.Plane;

/** Source map and depth map of a {@link RegionFold}, kept at half size: of detail in the first pass, of claims in the second. */
final class RegionMaps {
    private final BlendPlan plan;
    private final Rows rows;
    private final FocusPeak peak;
    private final Plane detail;
    private final float[] claimed;
    private final short[] claimant;

    RegionMaps(BlendPlan plan, Rows rows) {
        this.plan = plan;
        this.rows = rows;
        this.detail = new Plane(Binomial.half(plan.width()), Binomial.half(plan.height()));
        this.peak = new FocusPeak(detail.width(), detail.height());
        this.claimed = new float[detail.width() * detail.height()];
        this.claimant = new short[claimed.length];
        Arrays.fill(claimed, -1);
    }

    void learn(int frame, Plane full) {
        Binomial.reduce(full, detail, rows);
        int w = detail.width();
        rows.runWith(detail.height(), () -> {
            float[] line = new float[w];
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    for (int x = 0; x < w; x++) line[x] = Math.max(detail.at(x, y), Float.MIN_NORMAL);
                    peak.add(frame, y, line);
                }
            };
        });
    }

    void claim(int frame, Plane weight) {
        float[] now = weight.samples();
        int w = detail.width();
        rows.run(detail.height(), (from, to) -> {
            for (int i = from * w; i < to * w; i++) {
                if (now[i] > claimed[i]) {
                    claimed[i] = now[i];
                    claimant[i] = (short) frame;
                }
            }
        });
    }

    /** Per full-size pixel the frame with the greatest claim. */
    short[] source() {
        short[] map = new short[plan.width() * plan.height()];
        for (int y = 0; y < plan.height(); y++) {
            for (int x = 0; x < plan.width(); x++) map[y * plan.width() + x] = claimant[half(x, y)];
        }
        return map;
    }

    /**
     * Sweep position: the peak of detail where it agrees with the claim to within a frame, else the claimant; NaN where no
     * detail reached {@code least}.
     */
    void depth(Plane full, float least) {
        for (int y = 0; y < full.height(); y++) {
            for (int x = 0; x < full.width(); x++) full.set(x, y, position(half(x, y), least));
        }
    }

    private float position(int i, float least) {
        if (peak.best(i) < least) return Float.NaN;
        int rank = Short.toUnsignedInt(claimant[i]);
        return Math.abs(peak.frame(i) - rank) <= 1 ? peak.position(i, plan.frames()) : rank;
    }

    private int half(int x, int y) {
        return y / 2 * detail.width() + x / 2;
    }
}
