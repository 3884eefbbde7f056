package org.stook.imaging.blend;

import java.util.List;
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
     * The means, as a plane of full size. It takes the place of the sums, band by band, for there is no room for both.
     *
     * @param tiles of the composite
     * @param weight by which sums are divided; left as it is
     */
    Plane means(List<Tile> tiles, TiledSum weight, int width, int height, Rows rows) {
        int across = (width + Tile.WIDTH - 1) / Tile.WIDTH;
        float[] band = new float[across * phases * SLOT];
        for (int first = 0; first < tiles.size(); first += across) {
            int here = first;
            System.arraycopy(sums, at(first, 0), band, 0, band.length);
            rows.each(across, () -> i -> putMeans(tiles.get(here + i), band, at(i, 0), weight, width));
        }
        return new Plane(width, height, sums);
    }

    private void putMeans(Tile tile, float[] band, int from, TiledSum weight, int width) {
        for (int y = 0; y < tile.core().height(); y++) {
            int out = (tile.core().y() + y) * width + tile.core().x();
            int even = y % 2 * 2 * SLOT + y / 2 * ACROSS;
            int by = weight.at(tile.index(), 0);
            for (int phase = 0; phase < 2; phase++) {
                int in = from + even + phase * SLOT;
                int of = by + even + phase * SLOT;
                int count = (tile.core().width() + 1 - phase) / 2;
                for (int i = 0; i < count; i++) sums[out + 2 * i + phase] = band[in + i] / weight.sums[of + i];
            }
        }
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
