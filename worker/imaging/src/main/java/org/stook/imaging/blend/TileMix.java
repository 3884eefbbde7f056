package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/** The loops of {@link RegionMix} over one tile of one frame. One thread; its buffers are its own. */
final class TileMix {
    /** What detail alone can do against the claim: lets a bristle through that the region does not know of. */
    private static final float UNCLAIMED = 0.001f;
    /** Keeps a claim off zero, so that a pixel nobody claims is the mean of all. */
    private static final float LEAST = 1e-6f;

    private final MixSums sums;
    private final Claims claims;
    private final RegionMaps maps;
    private final TileBuffers buffers;

    TileMix(MixSums sums, Claims claims, RegionMaps maps) {
        this.sums = sums;
        this.claims = claims;
        this.maps = maps;
        this.buffers = new TileBuffers(sums.channels());
    }

    /** Folds a tile of a frame in, the claims of that frame having been found. */
    void add(int rank, BlendFrame frame, Tile tile) {
        TileBuffers b = buffers;
        frame.draw(tile.drawn(), b.drawn);
        for (int c = 0; c < b.full.length; c++) {
            tile.takeApart(b.drawn[c], sums.width(), sums.height(), b.full[c]);
        }
        for (int c = 0; c < b.half.length; c++) {
            Phases.halve(b.full[c], b.space, b.half[c]);
            tile.repeatBorder(b.half[c], sums.width(), sums.height());
        }
        claim(tile, b);
        mixFine(tile, b);
        mixCoarse(rank, tile, b);
    }

    /** The weight that the claim gives each pixel. */
    private void claim(Tile tile, TileBuffers b) {
        enlarge(tile, claims.fitted().slope(), b, b.slope);
        enlarge(tile, claims.fitted().offset(), b, b.claim);
        for (int p = 0; p < Phases.COUNT; p++) Phases.fourthPower(b.slope[p], b.luma()[p], b.claim[p], LEAST);
    }

    /** From a quarter of the size. */
    private static void enlarge(Tile tile, Plane quarter, TileBuffers b, float[][] out) {
        float[][] rows = tile.cutQuarter(quarter);
        for (int y = 0; y < Phases.ROWS; y++) {
            Lines.expand(rows, y + 2, b.line, b.wide);
            System.arraycopy(b.wide, 2, b.small, y * Phases.STRIDE, Phases.COLUMNS);
        }
        Phases.expand(b.small, b.space, out);
    }

    /** Adds the finest band, weighted by claim and by how near its detail is to the strongest. */
    private void mixFine(Tile tile, TileBuffers b) {
        tile.cutHalf(claims.near(), b.small);
        Phases.expand(b.small, b.space, b.weight);
        for (int p = 0; p < Phases.COUNT; p++) {
            Phases.weigh(b.weight[p], b.claim[p], UNCLAIMED);
            sums.fineWeight().load(tile.index(), p, b.sum);
            Phases.add(b.weight[p], b.sum);
            sums.fineWeight().store(tile.index(), p, b.sum);
        }
        for (int c = 0; c < b.half.length; c++) {
            Phases.expand(b.half[c], b.space, b.enlarged);
            for (int p = 0; p < Phases.COUNT; p++) {
                sums.fine()[c].load(tile.index(), p, b.sum);
                Phases.addBand(b.weight[p], b.full[c][p], b.enlarged[p], b.sum);
                sums.fine()[c].store(tile.index(), p, b.sum);
            }
        }
    }

    private void mixCoarse(int rank, Tile tile, TileBuffers b) {
        float[] weight = b.weight[0];
        Phases.halve(b.claim, b.space, weight);
        sums.coarseWeight().load(tile.index(), 0, b.sum);
        Phases.add(weight, b.sum);
        sums.coarseWeight().store(tile.index(), 0, b.sum);
        for (int c = 0; c < b.half.length; c++) {
            sums.coarse()[c].load(tile.index(), 0, b.sum);
            Phases.addProduct(weight, b.half[c], b.sum);
            sums.coarse()[c].store(tile.index(), 0, b.sum);
        }
        maps.claim(rank, RegionRender.halved(tile.core()), weight);
    }
}
