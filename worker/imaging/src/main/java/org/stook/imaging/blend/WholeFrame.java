package org.stook.imaging.blend;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** A frame that already is in its place and in memory as a whole. */
public record WholeFrame(Frame frame) implements BlendFrame {
    @Override
    public void detail(Plane half) {
        Plane map = DetailMap.of(frame.width(), frame.height(), (y, out) -> luma(0, y, out));
        System.arraycopy(map.samples(), 0, half.samples(), 0, half.width() * half.height());
    }

    @Override
    public void guide(Plane quarter) {
        Rows rows = new Rows(1);
        Plane half = new Plane(Binomial.half(frame.width()), Binomial.half(frame.height()));
        Binomial.reduce(Binomial.reduce(frame.luma(), half, rows), quarter, rows);
    }

    @Override
    public void draw(Area area, float[][][] target) {
        for (int y = 0; y < area.height(); y++) {
            int at = (area.y() + y) * frame.width() + area.x();
            for (int c = 0; c < frame.channels(); c++) {
                System.arraycopy(frame.plane(c).samples(), at, target[c][y], 0, area.width());
            }
            luma(area.x(), area.y() + y, target[frame.channels()][y]);
        }
    }

    /** Fills {@code out}, as far as the frame goes, from column {@code from} on. */
    private void luma(int from, int y, float[] out) {
        int at = y * frame.width() + from;
        int width = Math.min(out.length, frame.width() - from);
        float[] red = frame.plane(0).samples();
        if (frame.channels() == 1) {
            System.arraycopy(red, at, out, 0, width);
            return;
        }
        float[] green = frame.plane(1).samples();
        float[] blue = frame.plane(2).samples();
        for (int x = 0; x < width; x++) out[x] = 0.25f * (red[at + x] + blue[at + x]) + 0.5f * green[at + x];
    }
}
