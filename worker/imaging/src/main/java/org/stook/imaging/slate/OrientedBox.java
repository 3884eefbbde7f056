package org.stook.imaging.slate;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * A rectangle at any turn.
 *
 * @param x centre, pixels
 * @param y centre, pixels
 * @param width along the turned x axis
 * @param height along the turned y axis
 * @param angle of the x axis, radians, from -pi/4 to pi/4, clockwise as seen (y points down)
 */
record OrientedBox(double x, double y, double width, double height, double angle) {
    record Point(double x, double y) {}

    double area() {
        return width * height;
    }

    OrientedBox scaled(double factor) {
        // Pixel centres at integers: cell (0, 0) of a reduction by n is centred at (n - 1) / 2.
        double shift = (factor - 1) / 2;
        return new OrientedBox(x * factor + shift, y * factor + shift, width * factor, height * factor, angle);
    }

    OrientedBox grown(double by) {
        return new OrientedBox(x, y, width + 2 * by, height + 2 * by, angle);
    }

    /**
     * The smallest rectangle around points: one of its sides lies on the convex hull (Freeman and Shapira 1975), so each side of
     * the hull is tried.
     */
    static OrientedBox around(List<Point> points) {
        List<Point> hull = hull(points);
        OrientedBox best = along(hull, 0);
        for (int i = 0; i < hull.size(); i++) {
            Point a = hull.get(i);
            Point b = hull.get((i + 1) % hull.size());
            OrientedBox box = along(hull, quarter(Math.atan2(b.y() - a.y(), b.x() - a.x())));
            if (box.area() < best.area()) best = box;
        }
        return best;
    }

    private static double quarter(double angle) {
        double turn = Math.PI / 2;
        return angle - turn * Math.round(angle / turn);
    }

    private static OrientedBox along(List<Point> hull, double angle) {
        double cos = Math.cos(angle);
        double sin = Math.sin(angle);
        double left = Double.POSITIVE_INFINITY;
        double right = Double.NEGATIVE_INFINITY;
        double top = Double.POSITIVE_INFINITY;
        double bottom = Double.NEGATIVE_INFINITY;
        for (Point p : hull) {
            double u = p.x() * cos + p.y() * sin;
            double v = p.y() * cos - p.x() * sin;
            left = Math.min(left, u);
            right = Math.max(right, u);
            top = Math.min(top, v);
            bottom = Math.max(bottom, v);
        }
        double u = (left + right) / 2;
        double v = (top + bottom) / 2;
        return new OrientedBox(u * cos - v * sin, u * sin + v * cos, right - left + 1, bottom - top + 1, angle);
    }

    /** Andrew's monotone chain (1979). */
    private static List<Point> hull(List<Point> points) {
        List<Point> sorted = points.stream()
                .distinct()
                .sorted(Comparator.comparingDouble(Point::x).thenComparingDouble(Point::y))
                .toList();
        if (sorted.size() < 3) return sorted;
        List<Point> hull = new ArrayList<>(half(sorted));
        List<Point> reversed = new ArrayList<>(sorted);
        java.util.Collections.reverse(reversed);
        hull.addAll(half(reversed));
        return hull;
    }

    private static List<Point> half(List<Point> sorted) {
        List<Point> chain = new ArrayList<>();
        for (Point p : sorted) {
            while (chain.size() > 1 && turn(chain.get(chain.size() - 2), chain.get(chain.size() - 1), p) <= 0) {
                chain.remove(chain.size() - 1);
            }
            chain.add(p);
        }
        return chain.subList(0, chain.size() - 1);
    }

    private static double turn(Point a, Point b, Point c) {
        return (b.x() - a.x()) * (c.y() - a.y()) - (b.y() - a.y()) * (c.x() - a.x());
    }
}
