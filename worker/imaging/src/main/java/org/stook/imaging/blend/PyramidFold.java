package org.stook.imaging.blend;

import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** One stack going through {@link PyramidBlend}. */
final class PyramidFold implements Blend {
    /** The band whose choice is published as source map and depth map: half size, less noisy than the finest. */
    private static final int MAPPED = 1;

    private static final int SMALLEST = 8;

    private final Rows rows;
    private final BlendPlan plan;
    private final List<BandFold> bands = new ArrayList<>();
    private final List<Frame> levels = new ArrayList<>();
    private final Frame placed;
    private final Frame residual;
    private final int mapped;
    private final FocusPeak peak;

    PyramidFold(BlendPlan plan) {
        this.rows = new Rows(plan.threads());
        this.plan = plan;
        this.placed = Frame.blank(plan.width(), plan.height(), plan.channels());
        int w = plan.width();
        int h = plan.height();
        while (Math.min(w, h) > SMALLEST || (bands.isEmpty() && Math.max(w, h) > 1)) {
            bands.add(new BandFold(w, h, plan.channels(), rows));
            w = Binomial.half(w);
            h = Binomial.half(h);
            levels.add(Frame.blank(w, h, plan.channels()));
        }
        this.residual = Frame.blank(w, h, plan.channels());
        this.mapped = Math.min(MAPPED, bands.size() - 1);
        this.peak = mapped < 0
                ? new FocusPeak(1, 1)
                : new FocusPeak(bands.get(mapped).width(), bands.get(mapped).height());
    }

    @Override
    public int passes() {
        return 1;
    }

    @Override
    public void add(int pass, int rank, BlendFrame frame) {
        draw(frame);
        Frame fine = placed;
        for (int level = 0; level < bands.size(); level++) {
            Frame coarse = levels.get(level);
            for (int c = 0; c < fine.channels(); c++) Binomial.reduce(fine.plane(c), coarse.plane(c), rows);
            if (level == mapped) bands.get(level).add(fine, coarse, rank, peak);
            else bands.get(level).add(fine, coarse, rank);
            fine = coarse;
        }
        for (int c = 0; c < fine.channels(); c++) {
            float[] sum = residual.plane(c).samples();
            float[] in = fine.plane(c).samples();
            for (int i = 0; i < in.length; i++) sum[i] += in[i] / plan.frames();
        }
    }

    private void draw(BlendFrame frame) {
        List<Tile> tiles = Tile.all(plan.width(), plan.height());
        rows.each(tiles.size(), () -> i -> {
            Area area = tiles.get(i).core();
            float[][][] drawn = new float[plan.channels() + 1][area.height()][area.width()];
            frame.draw(area, drawn);
            for (int c = 0; c < plan.channels(); c++) placed.plane(c).put(drawn[c], area);
        });
    }

    @Override
    public Blended finish() {
        peak.settle(plan.frames(), rows);
        float believed = mapped < 0 ? 1 : bands.get(mapped).believed();
        Plane depth = new Plane(plan.width(), plan.height());
        int factor = 1 << Math.max(0, mapped);
        short[] sources = peak.sourceMap(depth, factor);
        return new Blended(rebuild(), () -> sources, () -> peak.depthMap(depth, factor, believed));
    }

    private Frame rebuild() {
        Frame built = residual;
        for (int level = bands.size() - 1; level >= 0; level--) {
            Frame fine = bands.get(level).finish();
            for (int c = 0; c < fine.channels(); c++) Binomial.addExpanded(built.plane(c), fine.plane(c), rows);
            built = fine;
        }
        return built;
    }
}
