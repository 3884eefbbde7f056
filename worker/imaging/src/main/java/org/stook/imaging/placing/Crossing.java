package org.stook.imaging.placing;

import org.stook.imaging.frame.Placement;

/**
 * Where a column of the reference frame crosses a row of the placed frame: at {@code u = (p x + q) / (r x + s)}, all four of
 * which depend on the row alone. Solving the placement for y at a given row {@code v}, and putting that into u, leaves this.
 */
final class Crossing {
    private final double[] m;

    Crossing(Placement placement) {
        this.m = placement.toArray();
    }

    /**
     * @param x column of the reference frame
     * @param v row of the placed frame
     * @return column of the placed frame
     */
    double column(double x, double v) {
        double below = v * m[7] - m[4];
        double y = ((m[3] - v * m[6]) * x + m[5] - v * m[8]) / below;
        return (m[0] * x + m[1] * y + m[2]) / (m[6] * x + m[7] * y + m[8]);
    }
}
