package org.stook.imaging.registration;

import org.stook.imaging.frame.Placement;

/**
 * Small motions of normal coordinates, ordered so that the first 4 make a similarity, the first 6 an affine and all 8 a
 * projective map: shift x, shift y, scale, turn, two shears, two perspective terms.
 */
final class Generators {
    private Generators() {}

    /** Fills how the point (x, y) moves per unit of each parameter: {@code dx[k]}, {@code dy[k]}. */
    static void at(double x, double y, double[] dx, double[] dy) {
        dx[0] = 1;
        dy[0] = 0;
        dx[1] = 0;
        dy[1] = 1;
        dx[2] = x;
        dy[2] = y;
        dx[3] = -y;
        dy[3] = x;
        dx[4] = x;
        dy[4] = -y;
        dx[5] = y;
        dy[5] = x;
        dx[6] = x * x;
        dy[6] = x * y;
        dx[7] = x * y;
        dy[7] = y * y;
    }

    /** The finite motion with these (small) parameters, of the model's own kind, its first order as in {@link #at}. */
    static Placement motion(double[] step, int from, int count) {
        double[] p = new double[8];
        System.arraycopy(step, from, p, 0, count);
        return Placement.of(1 + p[2] + p[4], -p[3] + p[5], p[0], p[3] + p[5], 1 + p[2] - p[4], p[1], -p[6], -p[7], 1);
    }

    /** The placement of the given model that moves the middle of the frame as {@code placement} does. */
    static Placement restricted(Placement placement, Model model) {
        double[] m = placement.toArray();
        if (model == Model.PROJECTIVE) return placement;
        if (model == Model.AFFINE) return Placement.affine(m[0], m[1], m[2], m[3], m[4], m[5]);
        double a = (m[0] + m[4]) / 2;
        double b = (m[3] - m[1]) / 2;
        return Placement.affine(a, -b, m[2], b, a, m[5]);
    }
}
