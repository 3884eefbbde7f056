package org.stook.imaging.score;

import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Plane;

/**
 * Root mean square of band-passed luminance in tiles: a 3 x 3 binomial smoothing against single-pixel
 * noise, then the four-neighbour Laplacian (the modified energy of Laplacian family; Pertuz, Puig and Garcia, "Analysis
 * of focus measure operators for shape-from-focus", Pattern Recognition 46, 2013).
 */
final class TileSharpness {
    static final int TILE = 32;

    private final int columns;
    private final int rows;
    private final float[] rms;

    private TileSharpness(int columns, int rows) {
        this.columns = columns;
        this.rows = rows;
        this.rms = new float[columns * rows];
    }

    /** Tiles of 32 x 32 pixels; frames smaller than one tile count as one. */
    static TileSharpness of(Plane luma, int threads) {
        TileSharpness tiles = new TileSharpness(Math.max(1, luma.width() / TILE), Math.max(1, luma.height() / TILE));
        Parallel.forEach(tiles.rows, threads, r -> tiles.measureRow(luma, r));
        return tiles;
    }

    int count() {
        return rms.length;
    }

    int columns() {
        return columns;
    }

    float rms(int tile) {
        return rms[tile];
    }

    private void measureRow(Plane luma, int tileRow) {
        int w = luma.width();
        int top = Math.max(2, tileRow * TILE);
        int bottom = Math.min(luma.height() - 2, (tileRow + 1) * TILE);
        int right = Math.min(w - 2, columns * TILE);
        LaplacianRows laplacian = new LaplacianRows(luma);
        double[] sums = new double[columns];
        for (int y = top; y < bottom; y++) {
            float[] squares = laplacian.squares(y);
            for (int c = 0; c < columns; c++) {
                sums[c] += sum(squares, Math.max(2, c * TILE), Math.min(right, (c + 1) * TILE));
            }
        }
        for (int c = 0; c < columns; c++) {
            long width = Math.min(right, (c + 1) * TILE) - Math.max(2, c * TILE);
            long count = width * (bottom - top);
            rms[tileRow * columns + c] = count <= 0 ? 0 : (float) Math.sqrt(sums[c] / count);
        }
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
