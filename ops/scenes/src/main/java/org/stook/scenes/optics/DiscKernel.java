package org.stook.scenes.optics;

import java.util.concurrent.atomic.AtomicReferenceArray;

/**
 * A disc of even light that sums to 1, on the pixel grid, kept as differences along rows: a running sum over a row turns
 * them back into the disc, so that spreading a pixel costs its rim, not its area. Radii come in steps of 1/16 px, above 4 px
 * of 1/8 px and above 8 px of 1/4 px.
 *
 * <p>The kernel's second moment is that of the ideal disc, r^2/4 on each axis; sampling by pixel areas alone would add 1/12.
 */
final class DiscKernel {

    private static final int ROWS_PER_PIXEL = 16;
    private static final int LARGEST = 256;
    private static final AtomicReferenceArray<DiscKernel> CACHE = new AtomicReferenceArray<>(indexOf(LARGEST) + 1);

    /** Pixels that the kernel reaches to every side. */
    final int reach;
    /** First difference of each row, rows from -reach to reach; one more entry marks the end. */
    final int[] rowStart;
    /** Column of each difference. */
    final short[] column;
    /** Value of each difference. */
    final float[] weight;

    private DiscKernel(double[][] rows) {
        reach = (rows.length - 1) / 2;
        rowStart = new int[rows.length + 1];
        short[] columns = new short[rows.length * (rows.length + 1)];
        float[] weights = new float[columns.length];
        int n = 0;
        for (int row = 0; row < rows.length; row++) {
            rowStart[row] = n;
            double before = 0;
            for (int col = 0; col <= rows.length; col++) {
                double value = col < rows.length ? rows[row][col] : 0;
                if (value != before) {
                    columns[n] = (short) (col - reach);
                    weights[n++] = (float) (value - before);
                }
                before = value;
            }
        }
        rowStart[rows.length] = n;
        column = java.util.Arrays.copyOf(columns, n);
        weight = java.util.Arrays.copyOf(weights, n);
    }

    /** The kernel next to this radius in pixels; radii over 256 px are held there. */
    static DiscKernel ofRadius(double radius) {
        int index = indexOf(radius);
        DiscKernel kernel = CACHE.get(index);
        if (kernel == null) {
            kernel = new DiscKernel(disc(radiusAt(index)));
            CACHE.set(index, kernel);
        }
        return kernel;
    }

    private static int indexOf(double radius) {
        double held = Math.min(LARGEST, radius);
        if (held < 4) return (int) Math.round(16 * held);
        return held < 8 ? 32 + (int) Math.round(8 * held) : 64 + (int) Math.round(4 * held);
    }

    /** The radius that a kernel is made for, next to the one asked for. */
    static double radiusAt(int index) {
        if (index < 64) return index / 16.0;
        return index < 96 ? (index - 32) / 8.0 : (index - 64) / 4.0;
    }

    /** The disc of this radius as rows of a square, summing to 1. */
    static double[][] disc(double radius) {
        if (radius > 8) return covered(Math.sqrt(radius * radius - 1.0 / 3));
        double wanted = radius * radius / 4;
        double low = 0.5;
        double high = radius + 1;
        for (int k = 0; k < 40; k++) {
            double middle = (low + high) / 2;
            if (secondMoment(covered(middle)) < wanted) low = middle;
            else high = middle;
        }
        return covered(low);
    }

    /** Mean square distance from the middle column. */
    static double secondMoment(double[][] rows) {
        int reach = (rows.length - 1) / 2;
        double sum = 0;
        for (double[] row : rows) {
            for (int col = 0; col < row.length; col++) sum += row[col] * (col - reach) * (col - reach);
        }
        return sum;
    }

    /** Share of each pixel that a disc of this radius covers, scaled to a sum of 1. */
    private static double[][] covered(double radius) {
        int reach = Math.max(0, (int) Math.ceil(radius - 0.5));
        double[][] rows = new double[2 * reach + 1][2 * reach + 1];
        double total = 0;
        for (int row = -reach; row <= reach; row++) {
            double[] cells = rows[row + reach];
            for (int k = 0; k < ROWS_PER_PIXEL; k++) {
                double y = row - 0.5 + (k + 0.5) / ROWS_PER_PIXEL;
                double half = Math.sqrt(Math.max(0, radius * radius - y * y));
                for (int col = -reach; col <= reach; col++) {
                    double share = Math.min(col + 0.5, half) - Math.max(col - 0.5, -half);
                    if (share > 0) cells[col + reach] += share;
                }
            }
            for (double cell : cells) total += cell;
        }
        for (double[] cells : rows) {
            for (int col = 0; col < cells.length; col++) cells[col] /= total;
        }
        return rows;
    }
}
