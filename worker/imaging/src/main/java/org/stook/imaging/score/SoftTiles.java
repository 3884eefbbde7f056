package org.stook.imaging.score;

/**
 * Tiles of the composite that are less sharp than the sharpest frame is there.
 *
 * @param side of a tile, pixels
 * @param columns tiles in a row; what does not fill a tile at the right and at the bottom belongs to none
 * @param soft row by row
 */
@SuppressWarnings("ArrayRecordComponent") // looked up pixel by pixel
public record SoftTiles(int side, int columns, boolean[] soft) {
    /** Whether the tile with that pixel is one of them. */
    public boolean at(int x, int y) {
        int column = x / side;
        int tile = y / side * columns + column;
        return column < columns && tile < soft.length && soft[tile];
    }
}
