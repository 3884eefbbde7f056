package org.stook.imaging.crop;

import java.util.ArrayList;
import java.util.List;

/** The points with {@code nx x + ny y <= limit}. */
record HalfPlane(double nx, double ny, double limit) {

    /** Left of the directed line a -> b, which is the inside of a quadrilateral walked clockwise on a y-down grid. */
    static HalfPlane rightOf(double[] a, double[] b) {
        double nx = b[1] - a[1];
        double ny = a[0] - b[0];
        double length = Math.hypot(nx, ny);
        return new HalfPlane(nx / length, ny / length, (nx * a[0] + ny * a[1]) / length);
    }

    /** Where the centre of a box of half extents (hx, hy) may lie so that the whole box stays inside. */
    HalfPlane forCentreOfBox(double hx, double hy) {
        return new HalfPlane(nx, ny, limit - Math.abs(nx) * hx - Math.abs(ny) * hy);
    }

    /** The part of a convex polygon inside; empty if nothing is left (Sutherland and Hodgman 1974). */
    List<double[]> clip(List<double[]> polygon) {
        List<double[]> kept = new ArrayList<>(polygon.size() + 1);
        for (int i = 0; i < polygon.size(); i++) {
            double[] p = polygon.get(i);
            double[] q = polygon.get((i + 1) % polygon.size());
            double dp = excess(p);
            double dq = excess(q);
            if (dp <= 0) kept.add(p);
            if ((dp < 0 && dq > 0) || (dp > 0 && dq < 0)) {
                double t = dp / (dp - dq);
                kept.add(new double[] {p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])});
            }
        }
        return kept;
    }

    private double excess(double[] p) {
        return nx * p[0] + ny * p[1] - limit;
    }
}
