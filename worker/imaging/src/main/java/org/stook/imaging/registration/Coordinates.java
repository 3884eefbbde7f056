package org.stook.imaging.registration;

import org.stook.imaging.frame.Placement;

/**
 * Coordinates of order one for the numerics: the frame's centre is (0, 0), half its long side is 1. Keeps the normal
 * equations well conditioned however large the frame (Hartley 1997, In defense of the eight-point algorithm).
 */
record Coordinates(int width, int height) {
    /** Full-size pixels in one unit. */
    double unit() {
        return Math.max(width, height) / 2.0;
    }

    private Placement fromPixels() {
        double u = unit();
        return Placement.affine(1 / u, 0, -(width - 1) / 2.0 / u, 0, 1 / u, -(height - 1) / 2.0 / u);
    }

    /** A placement between normal coordinates as one between full-size pixels. */
    Placement toPixels(Placement normal) {
        Placement n = fromPixels();
        return n.then(normal).then(n.inverse());
    }

    /** Normal x of column {@code x} of a plane reduced by {@code reduction}. */
    double normalX(double x, int reduction) {
        return (reduction * x + (reduction - 1) / 2.0 - (width - 1) / 2.0) / unit();
    }

    /** Normal y of row {@code y} of a plane reduced by {@code reduction}. */
    double normalY(double y, int reduction) {
        return (reduction * y + (reduction - 1) / 2.0 - (height - 1) / 2.0) / unit();
    }

    /** A placement between normal coordinates as one between pixels of planes reduced by {@code reduction}. */
    Placement toPixels(Placement normal, int reduction) {
        double u = unit() / reduction;
        Placement n = Placement.affine(1 / u, 0, normalX(0, reduction), 0, 1 / u, normalY(0, reduction));
        return n.then(normal).then(n.inverse());
    }
}
