package org.stook.imaging.blend;

import java.util.List;
import org.stook.imaging.frame.Frame;

/** The running mix: the finest band by detail and claim together, everything coarser by the claim. */
final class RegionMix {
    private final Rows rows;
    private final List<Tile> tiles;
    private final Claims claims;
    private final RegionMaps maps;
    private final MixSums sums;

    RegionMix(BlendPlan plan, List<Tile> tiles, Claims claims, RegionMaps maps, Rows rows) {
        this.rows = rows;
        this.tiles = tiles;
        this.claims = claims;
        this.maps = maps;
        this.sums = MixSums.blank(plan, tiles.size());
    }

    /** One thread's way of adding to the mix, tile by tile; no two threads may be given the same tile of a frame. */
    TileMix onTiles() {
        return new TileMix(sums, claims, maps);
    }

    /** The composite; the sums are used up. */
    Frame finish() {
        return new RegionMeans(sums, tiles, rows).make();
    }
}
