package org.stook.imaging.blend;

import java.util.List;
import java.util.stream.IntStream;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * The second pass: claims, and the mix they make. Where a frame has nothing to claim it is not even drawn, which spares most
 * of the work.
 */
final class RegionRender {
    /**
     * A mean claim below this makes no difference beside the one that is near 1: what counts is its fourth power, so with
     * this one a ten-thousandth.
     */
    private static final float LEAST_CLAIM = 0.1f;
    /** Means are taken over so many samples of the claims across and down, 16 pixels, so that noise does not count. */
    private static final int CELL = 4;

    private final Rows rows;
    private final List<Tile> tiles;
    private final int[] leading;
    private final Claims claims;
    private final RegionMaps maps;
    private final RegionMix mix;

    RegionRender(BlendPlan plan, RegionLearn learnt, Rows rows) {
        this.rows = rows;
        this.tiles = Tile.all(plan.width(), plan.height());
        this.leading = new int[tiles.size()];
        this.claims = new Claims(learnt, rows);
        this.maps = new RegionMaps(plan, learnt.peak(), rows);
        this.mix = new RegionMix(plan, tiles, claims, maps, rows);
        rows.each(
                leading.length,
                () -> i ->
                        leading[i] = learnt.peak().commonest(halved(tiles.get(i).core()), plan.frames()));
    }

    /**
     * @param detail of the frame, half size
     * @param guide its luminance, a quarter of the size
     */
    void add(int rank, BlendFrame frame, Plane detail, Plane guide) {
        claims.find(detail, guide);
        int[] active = IntStream.range(0, leading.length)
                .filter(i -> leading[i] == rank || isClaimed(tiles.get(i).core()))
                .toArray();
        rows.each(active.length, () -> {
            TileMix tile = mix.onTiles();
            return i -> tile.add(rank, frame, tiles.get(active[i]));
        });
    }

    private boolean isClaimed(Area area) {
        Area quarter = halved(halved(area));
        for (int y = quarter.y(); y < quarter.y() + quarter.height(); y += CELL) {
            for (int x = quarter.x(); x < quarter.x() + quarter.width(); x += CELL) {
                if (meanClaim(x, y) > LEAST_CLAIM) return true;
            }
        }
        return false;
    }

    private float meanClaim(int left, int top) {
        Plane claim = claims.claim();
        int right = Math.min(left + CELL, claim.width());
        int bottom = Math.min(top + CELL, claim.height());
        float sum = 0;
        for (int y = top; y < bottom; y++) for (int x = left; x < right; x++) sum += claim.at(x, y);
        return sum / ((right - left) * (bottom - top));
    }

    /** The same part of the composite at half the size. */
    static Area halved(Area area) {
        int x = area.x() / 2;
        int y = area.y() / 2;
        int right = Binomial.half(area.x() + area.width());
        int bottom = Binomial.half(area.y() + area.height());
        return new Area(x, y, right - x, bottom - y);
    }

    Frame composite() {
        return mix.finish();
    }

    RegionMaps maps() {
        return maps;
    }
}
