package org.stook.imaging.score;

import org.stook.imaging.frame.Area;

/**
 * Root mean square of band-passed luminance in tiles of 32 x 32 pixels; pictures smaller than one tile count as one: a 3 x 3
 * binomial smoothing against single-pixel noise, then the four-neighbour Laplacian (the modified energy of Laplacian family;
 * Pertuz, Puig and Garcia, "Analysis of focus measure operators for shape-from-focus", Pattern Recognition 46, 2013).
 */
final class TileSharpness {
    static final int TILE = 32;
    /** Pixels around a sample that its Laplacian looks at. */
    private static final int REACH = 2;

    private final int width;
    private final int height;
    private final int columns;
    private final int rows;

    TileSharpness(int width, int height) {
        this.width = width;
        this.height = height;
        this.columns = Math.max(1, width / TILE);
        this.rows = Math.max(1, height / TILE);
    }

    int count() {
        return columns * rows;
    }

    int columns() {
        return columns;
    }

    int rows() {
        return rows;
    }

    /** The part of the picture that is needed to measure a row of tiles. */
    Area around(int row) {
        int top = Math.max(0, row * TILE - REACH);
        return new Area(0, top, width, Math.min(height, (row + 1) * TILE + REACH) - top);
    }

    /** What is done with a measured tile. */
    interface Use {
        void tile(int index, float rms);
    }

    /**
     * Measures all tiles that lie within a part of the picture.
     *
     * @param luma luminance of the part: rows of samples
     */
    void measure(Area part, float[][] luma, Use use) {
        int first = (part.y() + (part.y() == 0 ? 0 : REACH) + TILE - 1) / TILE;
        for (int row = first; row < rows; row++) {
            int bottom = Math.min(height, (row + 1) * TILE + REACH);
            if (bottom > part.y() + part.height()) return;
            measureRow(part, luma, row, use);
        }
    }

    private void measureRow(Area part, float[][] luma, int row, Use use) {
        int top = Math.max(REACH, row * TILE);
        int bottom = Math.min(height - REACH, (row + 1) * TILE);
        int first = (part.x() + (part.x() == 0 ? 0 : REACH) + TILE - 1) / TILE;
        int last = first;
        while (last < columns && Math.min(width, (last + 1) * TILE + REACH) <= part.x() + part.width()) last++;
        if (last <= first) return;
        double[] sums = new double[last - first];
        LaplacianRows laplacian = new LaplacianRows(luma);
        for (int y = top; y < bottom; y++) {
            float[] squares = laplacian.squares(y - part.y());
            for (int c = first; c < last; c++) sums[c - first] += sum(squares, left(c) - part.x(), right(c) - part.x());
        }
        for (int c = first; c < last; c++) {
            long samples = (long) Math.max(0, right(c) - left(c)) * Math.max(0, bottom - top);
            use.tile(row * columns + c, samples == 0 ? 0 : (float) Math.sqrt(sums[c - first] / samples));
        }
    }

    private static int left(int column) {
        return Math.max(REACH, column * TILE);
    }

    private int right(int column) {
        return Math.min(width - REACH, (column + 1) * TILE);
    }

    /** In four interleaved sums, so that additions need not wait for each other. */
    private static float sum(float[] values, int from, int to) {
        float a = 0;
        float b = 0;
        float c = 0;
        float d = 0;
        int x = from;
        for (; x + 3 < to; x += 4) {
            a += values[x];
            b += values[x + 1];
            c += values[x + 2];
            d += values[x + 3];
        }
        for (; x < to; x++) a += values[x];
        return (a + b) + (c + d);
    }
}
