package org.stook.imaging.blend;

import java.util.Arrays;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/** Source map and depth map of a {@link RegionFold}, kept at half size. */
final class RegionMaps {
    private final BlendPlan plan;
    private final Rows rows;
    private final int width;
    private final FocusPeak peak;
    private final float[] claimed;
    private final short[] claimant;

    RegionMaps(BlendPlan plan, FocusPeak peak, Rows rows) {
        this.plan = plan;
        this.rows = rows;
        this.peak = peak;
        this.width = peak.width();
        this.claimed = new float[width * peak.height()];
        this.claimant = new short[claimed.length];
        Arrays.fill(claimed, -1);
    }

    /**
     * Learns the weights of a frame over a tile.
     *
     * @param part of the half-size picture
     * @param weight with the margin that {@link Phases} has
     */
    void claim(int frame, Area part, float[] weight) {
        for (int y = 0; y < part.height(); y++) {
            int at = TiledSum.inPhase(y);
            for (int x = 0, i = (part.y() + y) * width + part.x(); x < part.width(); x++, i++) {
                if (weight[at + x] > claimed[i]) {
                    claimed[i] = weight[at + x];
                    claimant[i] = (short) frame;
                }
            }
        }
    }

    /** Per full-size pixel the frame with the greatest claim. */
    short[] source() {
        short[] map = new short[plan.width() * plan.height()];
        rows.run(plan.height(), (from, to) -> {
            for (int y = from; y < to; y++) {
                int at = y * plan.width();
                for (int x = 0; x < plan.width(); x++) map[at + x] = claimant[(y >> 1) * width + (x >> 1)];
            }
        });
        return map;
    }

    /**
     * Sweep position: the peak of detail where it agrees with the claim to within a frame, else the claimant; NaN where no
     * detail reached {@code least}.
     */
    Plane depth(float least) {
        Plane full = new Plane(plan.width(), plan.height());
        rows.runWith(peak.height(), () -> {
            float[] line = new float[width];
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    for (int x = 0; x < width; x++) line[x] = position(y * width + x, least);
                    for (int row = 2 * y; row < Math.min(2 * y + 2, full.height()); row++) {
                        for (int x = 0; x < full.width(); x++) full.set(x, row, line[x >> 1]);
                    }
                }
            };
        });
        return full;
    }

    private float position(int i, float least) {
        if (peak.best(i) < least) return Float.NaN;
        int rank = Short.toUnsignedInt(claimant[i]);
        return Math.abs(peak.frame(i) - rank) <= 1 ? peak.position(i) : rank;
    }
}
