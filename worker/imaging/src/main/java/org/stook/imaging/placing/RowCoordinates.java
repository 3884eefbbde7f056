package org.stook.imaging.placing;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/**
 * Where the columns of the area cross one row of the frame. A point of the frame's row {@code v} in column {@code x} of the
 * area lies at {@code u = (p x + q) / (1 + r x)}; r is 0 unless the placement is projective.
 */
final class RowCoordinates {
    private static final int BITS = 40;
    private static final long ONE = 1L << BITS;

    private final Area area;
    private final int first;
    private final double[] m;
    final int[] column;
    final int[] weight;

    /** @param first column of the frame from which columns are counted */
    RowCoordinates(Area area, Placement placement, int first) {
        this.area = area;
        this.first = first;
        this.m = placement.toArray();
        this.column = new int[area.width()];
        this.weight = new int[area.width()];
    }

    /** Finds, for row {@code v} of the frame, the first tap and the weights of each column of the area. */
    void locate(int v) {
        // Solving the placement for y at a given v, and putting that into u, leaves a quotient of two linear terms in
        // x.
        double yBelow = v * m[7] - m[4];
        double yOfX = (m[3] - v * m[6]) / yBelow;
        double yOf0 = (m[5] - v * m[8]) / yBelow;
        double below = m[7] * yOf0 + m[8];
        double p = (m[0] + m[1] * yOfX) / below;
        double q = (m[1] * yOf0 + m[2]) / below;
        double r = (m[6] + m[7] * yOfX) / below;
        double start = p * area.x() + q;
        if (r == 0) {
            fixedPoint(start, p);
            return;
        }
        for (int i = 0; i < column.length; i++) {
            double u = (start + p * i) / (1 + r * (area.x() + i));
            // Inside the common area coordinates are positive, so the cast is a floor.
            int left = (int) u;
            column[i] = left + Kernel.FIRST - first;
            weight[i] = Kernel.offset(u - left);
        }
    }

    /** Equal steps, added up as whole numbers of 2^-40 pixels: quicker than conversions, and off by 1e-8 at most. */
    private void fixedPoint(double start, double step) {
        long u = Math.round(start * ONE) + ONE / (2 * Kernel.STEPS);
        long d = Math.round(step * ONE);
        int offset = Kernel.FIRST - first;
        for (int i = 0; i < column.length; i++, u += d) {
            column[i] = (int) (u >> BITS) + offset;
            weight[i] = (int) ((u & (ONE - 1)) * Kernel.STEPS >> BITS) * Kernel.TAPS;
        }
    }
}
