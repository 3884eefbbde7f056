package org.stook.imaging.composite.region;

import java.util.List;
import java.util.Optional;
import org.stook.imaging.composite.region.RegionOverride.Point;
import org.stook.imaging.frame.Area;

/** How much of a pixel belongs to a region: 1 inside, 0 outside, rising smoothly across the feather. */
public final class RegionMask {
    private final double[] x;
    private final double[] y;
    private final double feather;

    public RegionMask(RegionOverride region) {
        List<Point> outline = region.outline();
        this.x = outline.stream().mapToDouble(Point::x).toArray();
        this.y = outline.stream().mapToDouble(Point::y).toArray();
        this.feather = region.feather();
    }

    /** The pixels of {@code within} that may belong to it. */
    public Optional<Area> bounds(Area within) {
        int left = (int) Math.max(within.x(), Math.floor(least(x) - feather / 2));
        int top = (int) Math.max(within.y(), Math.floor(least(y) - feather / 2));
        int right = (int) Math.min(within.x() + within.width() - 1.0, Math.ceil(most(x) + feather / 2));
        int bottom = (int) Math.min(within.y() + within.height() - 1.0, Math.ceil(most(y) + feather / 2));
        return left > right || top > bottom
                ? Optional.empty()
                : Optional.of(new Area(left, top, right - left + 1, bottom - top + 1));
    }

    /** @return 0 to 1; 0.5 on the outline itself */
    public double weight(double px, double py) {
        boolean inside = false;
        double nearest = Double.POSITIVE_INFINITY;
        for (int i = 0, j = x.length - 1; i < x.length; j = i++) {
            boolean crosses = y[i] > py != y[j] > py;
            if (crosses && px < (x[j] - x[i]) * (py - y[i]) / (y[j] - y[i]) + x[i]) inside = !inside;
            nearest = Math.min(nearest, squaredDistance(px, py, i, j));
        }
        if (feather == 0) return inside ? 1 : 0;
        double distance = Math.sqrt(nearest) / feather;
        double t = Math.max(0, Math.min(1, 0.5 + (inside ? distance : -distance)));
        return t * t * (3 - 2 * t);
    }

    private double squaredDistance(double px, double py, int i, int j) {
        double dx = x[j] - x[i];
        double dy = y[j] - y[i];
        double length = dx * dx + dy * dy;
        double along = length == 0 ? 0 : Math.max(0, Math.min(1, ((px - x[i]) * dx + (py - y[i]) * dy) / length));
        double ex = px - x[i] - along * dx;
        double ey = py - y[i] - along * dy;
        return ex * ex + ey * ey;
    }

    private static double least(double[] values) {
        double least = Double.POSITIVE_INFINITY;
        for (double v : values) least = Math.min(least, v);
        return least;
    }

    private static double most(double[] values) {
        double most = Double.NEGATIVE_INFINITY;
        for (double v : values) most = Math.max(most, v);
        return most;
    }
}
