package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/**
 * Draws a smooth map of a frame, kept at reduced size, into an area of the reference frame at reduced size: bilinear, for
 * there is nothing in it that would suffer. Stateless; rows may be drawn by several threads at once.
 */
public final class MapPlacer {
    private final Area area;
    private final int step;

    /** @param step the distance of drawn samples in the area, pixels; the first lies on its first pixel */
    public MapPlacer(Area area, int step) {
        this.area = area;
        this.step = step;
    }

    /**
     * Draws row {@code y} of the reduced area.
     *
     * @param map sample i lies at pixel {@code spacing i + offset} of the frame
     */
    public void row(Plane map, double spacing, double offset, Placement placement, int y, float[] out) {
        double[] m = placement.toArray();
        double v = area.y() + (double) step * y;
        double across = m[1] * v + m[2];
        double down = m[4] * v + m[5];
        double below = m[7] * v + m[8];
        int lastX = map.width() - 1;
        int lastY = map.height() - 1;
        float[] in = map.samples();
        for (int x = 0; x < out.length; x++) {
            double u = area.x() + (double) step * x;
            double w = 1 / ((m[6] * u + below) * spacing);
            double px = Math.max(0, Math.min(lastX, (m[0] * u + across) * w - offset / spacing));
            double py = Math.max(0, Math.min(lastY, (m[3] * u + down) * w - offset / spacing));
            int left = (int) px;
            int top = (int) py;
            int at = top * map.width() + left;
            int right = left < lastX ? 1 : 0;
            int under = top < lastY ? map.width() : 0;
            float fx = (float) (px - left);
            float fy = (float) (py - top);
            float above = in[at] + fx * (in[at + right] - in[at]);
            float beneath = in[at + under] + fx * (in[at + under + right] - in[at + under]);
            out[x] = above + fy * (beneath - above);
        }
    }
}
