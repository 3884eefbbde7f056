package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/**
 * Draws a smooth map of a frame, kept at reduced size, into an area of the reference frame at reduced size: bilinear, for
 * there is nothing in it that would suffer. One thread.
 */
public final class MapPlacer {
    private static final int BITS = 32;
    private static final double ONE = 1L << BITS;

    private final Area area;
    private final int step;
    private float[] above = {};
    private float[] beneath = {};

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
        Row row = new Row(placement.toArray(), area.x(), area.y() + (double) step * y, step, spacing, offset);
        int last = out.length - 1;
        if (row.isEven() && isInside(map, row.x(0), row.y(0)) && isInside(map, row.x(last), row.y(last))) {
            quickly(map, row, out);
        } else {
            for (int x = 0; x < out.length; x++) out[x] = at(map, row.x(x), row.y(x));
        }
    }

    /** A row of the area in samples of the map. */
    private record Row(double[] m, double x0, double y0, double step, double spacing, double offset) {
        /** Whether it takes equal steps, as that of an affine placement does, and nearly all are that. */
        boolean isEven() {
            return m[6] == 0 && m[7] == 0;
        }

        double x(double i) {
            double x = x0 + step * i;
            return ((m[0] * x + m[1] * y0 + m[2]) / (m[6] * x + m[7] * y0 + m[8]) - offset) / spacing;
        }

        double y(double i) {
            double x = x0 + step * i;
            return ((m[3] * x + m[4] * y0 + m[5]) / (m[6] * x + m[7] * y0 + m[8]) - offset) / spacing;
        }
    }

    private static boolean isInside(Plane map, double x, double y) {
        return x >= 0 && y >= 0 && x < map.width() - 1 && y < map.height() - 1;
    }

    /** In pieces that lie between two rows of the map: those are mixed first, in vector code, then there is one line left. */
    private void quickly(Plane map, Row row, float[] out) {
        if (above.length != map.width()) {
            above = new float[map.width()];
            beneath = new float[map.width()];
        }
        double slope = row.y(1) - row.y(0);
        for (int from = 0; from < out.length; ) {
            int top = (int) row.y(from);
            double room =
                    slope == 0 ? out.length : (slope > 0 ? top + 1 - row.y(from) : row.y(from) - top) / Math.abs(slope);
            int to = (int) Math.min(out.length, Math.max(from + 1.0, Math.ceil(from + room)));
            mix(map, row, from, to, top);
            along(row, from, to, out);
            from = to;
        }
    }

    /** Leaves the mix of rows {@code top} and {@code top + 1}, as far as it is needed, in {@link #above}. */
    private void mix(Plane map, Row row, int from, int to, int top) {
        int left = (int) row.x(from);
        int count = Math.min(map.width(), (int) row.x(to - 1) + 2) - left;
        System.arraycopy(map.samples(), top * map.width() + left, above, left, count);
        System.arraycopy(map.samples(), (top + 1) * map.width() + left, beneath, left, count);
        float tilt = (float) ((row.y(1) - row.y(0)) / (row.x(1) - row.x(0)));
        float start = (float) (row.y(from) - top - tilt * row.x(from));
        float[] a = above;
        float[] b = beneath;
        for (int x = left; x < left + count; x++) a[x] += (start + tilt * x) * (b[x] - a[x]);
    }

    /** Positions are added up as whole numbers of 2^-32 samples: quicker than conversions, and off by 1e-6 at most. */
    private void along(Row row, int from, int to, float[] out) {
        long u = Math.round(row.x(from) * ONE);
        long d = Math.round((row.x(1) - row.x(0)) * ONE);
        float[] line = above;
        for (int x = from; x < to; x++, u += d) {
            int left = (int) (u >> BITS);
            float part = (u & 0xFFFFFFFFL) * (float) (1 / ONE);
            out[x] = line[left] + part * (line[left + 1] - line[left]);
        }
    }

    /** The map between four samples; beyond its border the border's own. */
    private static float at(Plane map, double x, double y) {
        double px = Math.max(0, Math.min(map.width() - 1.0, x));
        double py = Math.max(0, Math.min(map.height() - 1.0, y));
        int left = (int) px;
        int top = (int) py;
        int right = Math.min(left + 1, map.width() - 1);
        int under = Math.min(top + 1, map.height() - 1);
        float fx = (float) (px - left);
        float upper = map.at(left, top) + fx * (map.at(right, top) - map.at(left, top));
        float lower = map.at(left, under) + fx * (map.at(right, under) - map.at(left, under));
        return upper + (float) (py - top) * (lower - upper);
    }
}
