package org.stook.imaging.blend;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** A frame that already is in its place and in memory as a whole. */
public final class WholeFrame implements BlendFrame {
    private final Frame frame;
    private final Plane luma;

    public WholeFrame(Frame frame) {
        this.frame = frame;
        this.luma = frame.luma();
    }

    @Override
    public void detail(Plane half) {
        Plane map = DetailMap.of(luma.width(), luma.height(), (y, even, odd) -> {
            for (int x = 0; x < luma.width(); x++) (x % 2 == 0 ? even : odd)[x / 2 + 1] = luma.at(x, y);
        });
        System.arraycopy(map.samples(), 0, half.samples(), 0, half.width() * half.height());
    }

    @Override
    public void guide(Plane quarter) {
        Rows rows = new Rows(1);
        Plane half = new Plane(Binomial.half(luma.width()), Binomial.half(luma.height()));
        Binomial.reduce(Binomial.reduce(luma, half, rows), quarter, rows);
    }

    @Override
    public void draw(Area area, float[][][] target) {
        for (int c = 0; c < frame.channels(); c++) copy(frame.plane(c), area, target[c]);
        copy(luma, area, target[frame.channels()]);
    }

    private static void copy(Plane plane, Area area, float[][] target) {
        float[][] rows = plane.cut(area);
        for (int y = 0; y < rows.length; y++) System.arraycopy(rows[y], 0, target[y], 0, area.width());
    }
}
