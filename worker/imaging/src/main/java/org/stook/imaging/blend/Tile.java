package org.stook.imaging.blend;

import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.Area;

/**
 * A part of the composite small enough for the processor's cache.
 *
 * @param core what the tile is answerable for; its first column and row are multiples of 4
 * @param drawn the core and what its filters need around it, as far as the composite goes
 */
record Tile(Area core, Area drawn) {
    static final int WIDTH = 128;
    static final int HEIGHT = 64;
    /** A sample of the fine band needs two of half size, and those two more of full size. */
    private static final int MARGIN = 4;

    /** The tiles of a composite, row by row. */
    static List<Tile> all(int width, int height) {
        List<Tile> tiles = new ArrayList<>();
        for (int y = 0; y < height; y += HEIGHT) {
            for (int x = 0; x < width; x += WIDTH) {
                Area core = new Area(x, y, Math.min(WIDTH, width - x), Math.min(HEIGHT, height - y));
                tiles.add(new Tile(core, around(core, width, height)));
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
}
