package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * Sums over the frames, kept tile by tile and phase by phase (see {@link Phases}): what a tile adds to lies together then,
 * which is what the processor fetches quickly. Threads may each work on tiles of their own.
 */
final class TiledSum {
    private static final int ACROSS = Tile.WIDTH / 2;
    private static final int DOWN = Tile.HEIGHT / 2;
    private static final int SLOT = ACROSS * DOWN;

    private final int phases;
    private final float[] sums;

    /** @param phases 4 at full size, 1 at half size */
    TiledSum(int tiles, int phases) {
        this.phases = phases;
        this.sums = new float[tiles * phases * SLOT];
    }

    /** Fetches a phase of a tile. */
    void load(int tile, int phase, float[] into) {
        int at = at(tile, phase);
        for (int y = 0; y < DOWN; y++) System.arraycopy(sums, at + y * ACROSS, into, inPhase(y), ACROSS);
    }

    /** Puts it back. */
    void store(int tile, int phase, float[] from) {
        int at = at(tile, phase);
        for (int y = 0; y < DOWN; y++) System.arraycopy(from, inPhase(y), sums, at + y * ACROSS, ACROSS);
    }

    /** Index of the first sample of a core row in arrays that have a margin. */
    static int inPhase(int row) {
        return (row + Phases.MARGIN) * Phases.STRIDE + Phases.MARGIN;
    }

    private int at(int tile, int phase) {
        return (tile * phases + phase) * SLOT;
    }

    /**
     * Copies what a tile has summed up, row by row.
     *
     * @param slot how many tiles stand left of it
     * @param out for each row its even and its odd columns
     */
    void copy(int tile, int slot, float[][][] out) {
        for (int y = 0; y < Tile.HEIGHT; y++) {
            for (int odd = 0; odd < 2; odd++) {
                int from = at(tile, y % 2 * 2 + odd) + y / 2 * ACROSS;
                System.arraycopy(sums, from, out[y][odd], slot * ACROSS, ACROSS);
            }
        }
    }

    /** A plane of full size in the place of the sums, for there is no room for both. It is yet to be filled. */
    Plane place(int width, int height) {
        return new Plane(width, height, sums);
    }

    /** Puts the means of a tile into its place in a plane of half size. */
    void putHalfMeans(Tile tile, TiledSum weight, Plane half) {
        int height = Binomial.half(tile.core().height());
        int width = Binomial.half(tile.core().width());
        for (int y = 0; y < height; y++) {
            int row = (tile.core().y() / 2 + y) * half.width() + tile.core().x() / 2;
            int at = at(tile.index(), 0) + y * ACROSS;
            for (int x = 0; x < width; x++) half.samples()[row + x] = sums[at + x] / weight.sums[at + x];
        }
    }
}
