package org.stook.imaging.blend;

import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

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
        List<Plane> planes = new ArrayList<>();
        Plane half = new Plane(Binomial.half(sums.width()), Binomial.half(sums.height()));
        for (int c = 0; c < sums.channels(); c++) planes.add(plane(sums.fine()[c], sums.coarse()[c], half));
        return new Frame(planes);
    }

    /** @param half to work in */
    private Plane plane(TiledSum fine, TiledSum coarse, Plane half) {
        rows.each(tiles.size(), () -> i -> coarse.putHalfMeans(tiles.get(i), sums.coarseWeight(), half));
        Plane full = fine.means(tiles, sums.fineWeight(), sums.width(), sums.height(), rows);
        Binomial.addExpanded(half, full, rows);
        return full;
    }
}
