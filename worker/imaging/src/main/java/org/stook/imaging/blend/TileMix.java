package org.stook.imaging.blend;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/** The loops of {@link RegionMix} over one tile of one frame. One thread; its buffers are its own. */
final class TileMix {
    /** What detail alone can do against the claim: lets a bristle through that the region does not know of. */
    private static final float UNCLAIMED = 0.001f;
    /** Keeps a claim off zero, so that a pixel nobody claims is the mean of all. */
    private static final float LEAST = 1e-6f;

    private final TileSums sums;
    private final Claims claims;
    private final RegionMaps maps;
    private TileBuffers buffers = new TileBuffers(1, 1, 1);

    TileMix(TileSums sums, Claims claims, RegionMaps maps) {
        this.sums = sums;
        this.claims = claims;
        this.maps = maps;
    }

    /** Folds a tile of a frame in, the claims of that frame having been found. */
    void add(int rank, BlendFrame frame, Tile tile) {
        int channels = sums.fine().channels();
        if (!buffers.fit(tile.drawn())) {
            buffers = new TileBuffers(tile.drawn().width(), tile.drawn().height(), channels);
        }
        TileBuffers b = buffers;
        frame.draw(tile.drawn(), b.drawn);
        for (int c = 0; c < channels; c++) {
            for (int y = 0; y < b.half[c].length; y++) Lines.halve(b.drawn[c], y, b.wide, b.half[c][y]);
        }
        claim(tile.drawn(), b);
        mixFine(tile, b);
        mixCoarse(rank, tile, b);
    }

    /** The weight that the claim gives each pixel. */
    private void claim(Area drawn, TileBuffers b) {
        Area quarter = quarter(drawn);
        float[][] slope = Lines.expand(claims.fitted().slope().cut(quarter));
        float[][] offset = Lines.expand(claims.fitted().offset().cut(quarter));
        float[] line = new float[slope[0].length];
        float[] steep = new float[2 * line.length];
        float[] flat = new float[2 * line.length];
        int left = drawn.x() - 4 * quarter.x();
        int top = drawn.y() - 4 * quarter.y();
        for (int y = 0; y < b.claim.length; y++) {
            Lines.expand(slope, y + top, line, steep);
            Lines.expand(offset, y + top, line, flat);
            float[] out = b.claim[y];
            System.arraycopy(steep, left, b.wide, 0, out.length);
            System.arraycopy(flat, left, out, 0, out.length);
            fourthPower(b.wide, b.luma()[y], out);
        }
    }

    private static void fourthPower(float[] slope, float[] luma, float[] out) {
        for (int x = 0; x < out.length; x++) {
            float v = Math.max(LEAST, Math.min(1, slope[x] * luma[x] + out[x]));
            float squared = v * v;
            out[x] = squared * squared;
        }
    }

    /** The part of a plane of a quarter of the size that is needed to enlarge it to {@code drawn}. */
    private Area quarter(Area drawn) {
        Plane plane = claims.claim();
        int x = Math.max(0, drawn.x() / 4 - 2);
        int y = Math.max(0, drawn.y() / 4 - 2);
        int right = Math.min(plane.width(), (drawn.x() + drawn.width()) / 4 + 3);
        int bottom = Math.min(plane.height(), (drawn.y() + drawn.height()) / 4 + 3);
        return new Area(x, y, right - x, bottom - y);
    }

    /** Adds the finest band, weighted by claim and by how near its detail is to the strongest. */
    private void mixFine(Tile tile, TileBuffers b) {
        float[][] near = claims.near().cut(RegionRender.halved(tile.drawn()));
        int skip = tile.core().x() - tile.drawn().x();
        for (int row = tile.core().y(); row < tile.core().y() + tile.core().height(); row++) {
            int y = row - tile.drawn().y();
            float[] weight = b.weight;
            float[] claim = b.claim[y];
            Lines.expand(near, y, b.narrow, weight);
            for (int x = 0; x < weight.length; x++) weight[x] = weight[x] * weight[x] * (claim[x] + UNCLAIMED);
            TileSums.add(sums.fineWeight(), tile.core(), row, weight, skip, b.scratch);
            for (int c = 0; c < b.half.length; c++) {
                float[] fine = b.drawn[c][y];
                float[] band = b.wide;
                Lines.expand(b.half[c], y, b.narrow, band);
                for (int x = 0; x < band.length; x++) band[x] = weight[x] * (fine[x] - band[x]);
                TileSums.add(sums.fine().plane(c), tile.core(), row, band, skip, b.scratch);
            }
        }
    }

    private void mixCoarse(int rank, Tile tile, TileBuffers b) {
        Area core = RegionRender.halved(tile.core());
        int left = tile.drawn().x() / 2;
        int top = tile.drawn().y() / 2;
        for (int row = core.y(); row < core.y() + core.height(); row++) {
            int y = row - top;
            Lines.halve(b.claim, y, b.wide, b.narrow);
            TileSums.add(sums.coarseWeight(), core, row, b.narrow, core.x() - left, b.narrowScratch);
            for (int c = 0; c < b.half.length; c++) {
                // Nobody needs this row of the frame again.
                float[] weighted = b.half[c][y];
                for (int x = 0; x < weighted.length; x++) weighted[x] *= b.narrow[x];
                TileSums.add(sums.coarse().plane(c), core, row, weighted, core.x() - left, b.narrowScratch);
            }
            maps.claim(rank, row, core, b.narrow, core.x() - left);
        }
    }
}
