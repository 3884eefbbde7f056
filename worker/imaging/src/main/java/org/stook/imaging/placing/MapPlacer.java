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
        double below = m[7] * v + m[8];
        double x0 = m[0] * area.x() + m[1] * v + m[2];
        double y0 = m[3] * area.x() + m[4] * v + m[5];
        if (m[6] == 0) {
            // An affine map, as nearly all are, takes equal steps.
            double unit = 1 / (below * spacing);
            double shift = offset / spacing;
            for (int x = 0; x < out.length; x++) {
                double u = (double) step * x;
                out[x] = at(map, (x0 + m[0] * u) * unit - shift, (y0 + m[3] * u) * unit - shift);
            }
            return;
        }
        for (int x = 0; x < out.length; x++) {
            double u = (double) step * x;
            double unit = 1 / ((m[6] * (area.x() + u) + below) * spacing);
            double px = (x0 + m[0] * u) * unit - offset / spacing;
            out[x] = at(map, px, (y0 + m[3] * u) * unit - offset / spacing);
        }
    }

    /** The map between four samples; beyond its border the border's own. */
    private static float at(Plane map, double x, double y) {
        float[] in = map.samples();
        int width = map.width();
        int left = (int) x;
        int top = (int) y;
        if (x < 0 || y < 0 || left >= width - 1 || top >= map.height() - 1) return atBorder(map, x, y);
        int i = top * width + left;
        float fx = (float) (x - left);
        float above = in[i] + fx * (in[i + 1] - in[i]);
        float beneath = in[i + width] + fx * (in[i + width + 1] - in[i + width]);
        return above + (float) (y - top) * (beneath - above);
    }

    private static float atBorder(Plane map, double x, double y) {
        double px = Math.max(0, Math.min(map.width() - 1.0, x));
        double py = Math.max(0, Math.min(map.height() - 1.0, y));
        int left = (int) px;
        int top = (int) py;
        int right = Math.min(left + 1, map.width() - 1);
        int under = Math.min(top + 1, map.height() - 1);
        float fx = (float) (px - left);
        float above = map.at(left, top) + fx * (map.at(right, top) - map.at(left, top));
        float beneath = map.at(left, under) + fx * (map.at(right, under) - map.at(left, under));
        return above + (float) (py - top) * (beneath - above);
    }
}
