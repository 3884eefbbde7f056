package org.stook.imaging.blend;

import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/**
 * A part of the composite small enough for the processor's cache.
 *
 * @param index number of the tile
 * @param core what the tile is answerable for; its first column and row are multiples of {@link #WIDTH} and {@link #HEIGHT}
 * @param drawn the core and what its filters need around it, as far as the composite goes
 */
record Tile(int index, Area core, Area drawn) {
    static final int WIDTH = 128;
    static final int HEIGHT = 64;
    /** A sample of the fine band needs two of half size, and those two more of full size. */
    static final int MARGIN = 2 * Phases.MARGIN;

    /** The tiles of a composite, row by row. */
    static List<Tile> all(int width, int height) {
        List<Tile> tiles = new ArrayList<>();
        for (int y = 0; y < height; y += HEIGHT) {
            for (int x = 0; x < width; x += WIDTH) {
                Area core = new Area(x, y, Math.min(WIDTH, width - x), Math.min(HEIGHT, height - y));
                tiles.add(new Tile(tiles.size(), core, around(core, width, height)));
            }
        }
        return tiles;
    }

    private static Area around(Area core, int width, int height) {
        int x = Math.max(0, core.x() - MARGIN);
        int y = Math.max(0, core.y() - MARGIN);
        int right = Math.min(width, core.x() + core.width() + MARGIN);
        int bottom = Math.min(height, core.y() + core.height() + MARGIN);
        return new Area(x, y, right - x, bottom - y);
    }

    /** Whether all of it and its margin lies in the composite. */
    boolean isWhole() {
        return drawn.width() == WIDTH + 2 * MARGIN && drawn.height() == HEIGHT + 2 * MARGIN;
    }

    /** First column of the margin; negative at the composite's border. */
    int left() {
        return core.x() - MARGIN;
    }

    /** First row of the margin; negative at the composite's border. */
    int top() {
        return core.y() - MARGIN;
    }

    /**
     * Takes a drawn picture apart into its phases; beyond the composite's border it is mirrored about the outermost pixel.
     *
     * @param rows of {@link #drawn}
     */
    void takeApart(float[][] rows, int width, int height, float[][] phases) {
        for (int y = 0; y < 2 * Phases.ROWS; y++) {
            float[] even = phases[y % 2 * 2];
            float[] odd = phases[y % 2 * 2 + 1];
            int at = y / 2 * Phases.STRIDE;
            if (isWhole()) {
                float[] row = rows[y];
                for (int x = 0; x < Phases.COLUMNS; x++) {
                    even[at + x] = row[2 * x];
                    odd[at + x] = row[2 * x + 1];
                }
            } else {
                float[] row = rows[inDrawn(top() + y, height, drawn.y(), drawn.height())];
                for (int x = 0; x < Phases.COLUMNS; x++) {
                    even[at + x] = row[inDrawn(left() + 2 * x, width, drawn.x(), drawn.width())];
                    odd[at + x] = row[inDrawn(left() + 2 * x + 1, width, drawn.x(), drawn.width())];
                }
            }
        }
    }

    private static int inDrawn(int i, int extent, int first, int count) {
        return Math.max(0, Math.min(count - 1, Binomial.mirror(i, extent) - first));
    }

    /** Cuts the tile, with its margin, out of a plane of half size; beyond the border that is repeated. */
    void cutHalf(Plane half, float[] out) {
        for (int y = 0; y < Phases.ROWS; y++) {
            int row = clamp(top() / 2 + y, half.height()) * half.width();
            if (isWhole()) {
                System.arraycopy(half.samples(), row + left() / 2, out, y * Phases.STRIDE, Phases.COLUMNS);
            } else {
                for (int x = 0; x < Phases.COLUMNS; x++) {
                    out[y * Phases.STRIDE + x] = half.samples()[row + clamp(left() / 2 + x, half.width())];
                }
            }
        }
    }

    /** Repeats the border of a tile of half size beyond the composite's border. */
    void repeatBorder(float[] half, int width, int height) {
        if (isWhole()) return;
        for (int y = 0; y < Phases.ROWS; y++) {
            int from = clamp(top() / 2 + y, Binomial.half(height)) - top() / 2;
            for (int x = 0; x < Phases.COLUMNS; x++) {
                int column = clamp(left() / 2 + x, Binomial.half(width)) - left() / 2;
                half[y * Phases.STRIDE + x] = half[from * Phases.STRIDE + column];
            }
        }
    }

    /** Cuts the tile, and one sample more than its margin, out of a plane of a quarter of the size. */
    float[][] cutQuarter(Plane quarter) {
        float[][] rows = new float[Phases.ROWS / 2 + 2][Phases.COLUMNS / 2 + 2];
        for (int y = 0; y < rows.length; y++) {
            int row = clamp(top() / 4 - 1 + y, quarter.height()) * quarter.width();
            for (int x = 0; x < rows[y].length; x++) {
                rows[y][x] = quarter.samples()[row + clamp(left() / 4 - 1 + x, quarter.width())];
            }
        }
        return rows;
    }

    private static int clamp(int i, int extent) {
        return Math.max(0, Math.min(extent - 1, i));
    }
}
