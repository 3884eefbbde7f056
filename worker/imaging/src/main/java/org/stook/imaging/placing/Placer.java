package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;

/** Draws frames into an area of the reference frame. Stateless; rows may be drawn by several threads at once. */
public final class Placer {
    /** Pixels that must exist around every point that is sampled. */
    public static final int SUPPORT = 3;

    private final Area area;

    public Placer(Area area) {
        this.area = area;
    }

    /**
     * Draws rows {@code from .. to - 1} of the area.
     *
     * @param source the whole frame; every point of the area must map at least {@link #SUPPORT} pixels inside it
     * @param target a frame of the area's size, channels as the source
     */
    public void draw(Frame source, Placement placement, int from, int to, Frame target) {
        RowCoordinates at = new RowCoordinates(area, placement);
        for (int row = from; row < to; row++) {
            at.locate(row);
            for (int c = 0; c < source.channels(); c++) {
                drawRow(
                        source.plane(c).samples(),
                        source.width(),
                        at,
                        target.plane(c).samples(),
                        row * area.width());
            }
        }
    }

    private void drawRow(float[] in, int stride, RowCoordinates at, float[] out, int start) {
        float[] w = Kernel.weights();
        for (int i = 0; i < area.width(); i++) {
            int wx = at.weightX[i];
            int wy = at.weightY[i];
            float w0 = w[wx], w1 = w[wx + 1], w2 = w[wx + 2], w3 = w[wx + 3], w4 = w[wx + 4], w5 = w[wx + 5];
            int p = at.corner(i, stride);
            float sum = 0;
            for (int k = 0; k < Kernel.TAPS; k++, p += stride) {
                sum += w[wy + k]
                        * (w0 * in[p]
                                + w1 * in[p + 1]
                                + w2 * in[p + 2]
                                + w3 * in[p + 3]
                                + w4 * in[p + 4]
                                + w5 * in[p + 5]);
            }
            out[start + i] = sum;
        }
    }
}
