package org.stook.imaging.score;

import org.stook.imaging.frame.Frame;

/**
 * Root mean square of a band-passed green (or grey) plane in tiles: a 3 x 3 binomial smoothing against single-pixel
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
    static TileSharpness of(Frame frame) {
        TileSharpness tiles = new TileSharpness(Math.max(1, frame.width() / TILE), Math.max(1, frame.height() / TILE));
        for (int r = 0; r < tiles.rows; r++) tiles.measureRow(frame, r);
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

    private void measureRow(Frame frame, int tileRow) {
        int w = frame.width();
        int h = frame.height();
        float[] g = frame.plane(frame.channels() == 3 ? 1 : 0).samples();
        float[][] smooth = new float[3][w];
        double[] sums = new double[columns];
        long[] counts = new long[columns];
        int top = Math.max(2, tileRow * TILE);
        int bottom = Math.min(h - 2, (tileRow + 1) * TILE);
        for (int y = top; y < bottom; y++) {
            for (int k = -1; k <= 1; k++) smoothRow(g, w, y + k, smooth[k + 1]);
            for (int x = 2; x < Math.min(w - 2, columns * TILE); x++) {
                float l = 4 * smooth[1][x] - smooth[1][x - 1] - smooth[1][x + 1] - smooth[0][x] - smooth[2][x];
                sums[x / TILE] += l * l;
                counts[x / TILE]++;
            }
        }
        for (int c = 0; c < columns; c++) {
            rms[tileRow * columns + c] = counts[c] == 0 ? 0 : (float) Math.sqrt(sums[c] / counts[c]);
        }
    }

    private static void smoothRow(float[] g, int w, int y, float[] out) {
        int a = (y - 1) * w;
        int b = y * w;
        int c = (y + 1) * w;
        for (int x = 1; x < w - 1; x++) {
            out[x] = (g[a + x - 1]
                            + g[a + x + 1]
                            + g[c + x - 1]
                            + g[c + x + 1]
                            + 2 * (g[a + x] + g[c + x] + g[b + x - 1] + g[b + x + 1])
                            + 4 * g[b + x])
                    / 16;
        }
    }
}
