package org.stook.imaging.blend;

import java.util.List;
import java.util.stream.Stream;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * Makes the composite of what a mix has added up: means of the finest band, and upon them the expanded means of what is coarser.
 * A row of tiles at a time and all channels together, so that nothing is fetched from memory twice; even and odd columns apart,
 * so that all loops but the last are vector code.
 */
final class RegionMeans {
    /** Rows made in one piece of work. */
    private static final int STRIP = 8;

    private final MixSums sums;
    private final List<Tile> tiles;
    private final Rows rows;
    private final int across;
    private final List<Plane> halves;
    private final List<Plane> full;
    /** Sums of a row of tiles: for each channel and row the even and the odd columns. */
    private final float[][][][] fine;
    /** The same of the weights. */
    private final float[][][] weight;

    RegionMeans(MixSums sums, List<Tile> tiles, Rows rows) {
        this.sums = sums;
        this.tiles = tiles;
        this.rows = rows;
        this.across = (sums.width() + Tile.WIDTH - 1) / Tile.WIDTH;
        this.halves = Stream.generate(() -> new Plane(Binomial.half(sums.width()), Binomial.half(sums.height())))
                .limit(sums.channels())
                .toList();
        this.full = Stream.of(sums.fine())
                .map(f -> f.place(sums.width(), sums.height()))
                .toList();
        this.fine = new float[sums.channels()][Tile.HEIGHT][2][across * Tile.WIDTH / 2];
        this.weight = new float[Tile.HEIGHT][2][across * Tile.WIDTH / 2];
    }

    /** The sums are used up. */
    Frame make() {
        rows.each(tiles.size(), () -> i -> putHalf(tiles.get(i)));
        for (int first = 0; first < tiles.size(); first += across) {
            int here = first;
            rows.each(across, () -> i -> copy(here + i, i));
            int top = first / across * Tile.HEIGHT;
            int count = Math.min(Tile.HEIGHT, sums.height() - top);
            rows.each((count + STRIP - 1) / STRIP, () -> {
                CoarseRow row = new CoarseRow(halves.get(0).width());
                return i -> makeRows(top, i * STRIP, Math.min(count, (i + 1) * STRIP), row);
            });
        }
        return new Frame(full);
    }

    private void putHalf(Tile tile) {
        for (int c = 0; c < sums.channels(); c++) {
            sums.coarse()[c].putHalfMeans(tile, sums.coarseWeight(), halves.get(c));
        }
    }

    private void copy(int tile, int slot) {
        for (int c = 0; c < fine.length; c++) sums.fine()[c].copy(tile, slot, fine[c]);
        sums.fineWeight().copy(tile, slot, weight);
    }

    /** A coarse row of full height; what rows are made with. One thread. */
    private static final class CoarseRow {
        /** Its samples, and what stands left and right of each; its ends are repeated. */
        final float[] here;

        final float[] left;
        final float[] right;

        CoarseRow(int width) {
            here = new float[width];
            left = new float[width];
            right = new float[width];
        }

        void expandDown(Plane half, int y) {
            Binomial.expandDown(half, y, here);
            int last = here.length - 1;
            System.arraycopy(here, 0, left, 1, last);
            System.arraycopy(here, 1, right, 0, last);
            left[0] = here[0];
            right[last] = here[last];
        }
    }

    private void makeRows(int top, int from, int to, CoarseRow row) {
        for (int c = 0; c < fine.length; c++) {
            for (int y = from; y < to; y++) {
                row.expandDown(halves.get(c), top + y);
                float[] even = fine[c][y][0];
                float[] odd = fine[c][y][1];
                makeEven(even, weight[y][0], row);
                makeOdd(odd, weight[y][1], row);
                interleave(even, odd, full.get(c).samples(), (top + y) * sums.width(), sums.width());
            }
        }
    }

    /** As {@link Binomial#widen}. */
    private static void makeEven(float[] even, float[] weight, CoarseRow row) {
        float[] here = row.here;
        float[] left = row.left;
        float[] right = row.right;
        int last = here.length - 1;
        float end = even[last] / weight[last] + (left[last] + 7 * here[last]) * 0.125f;
        for (int i = 0; i < here.length; i++) {
            even[i] = even[i] / weight[i] + (left[i] + right[i] + 6 * here[i]) * 0.125f;
        }
        even[last] = end;
    }

    private static void makeOdd(float[] odd, float[] weight, CoarseRow row) {
        float[] here = row.here;
        float[] right = row.right;
        for (int i = 0; i < here.length; i++) odd[i] = odd[i] / weight[i] + (here[i] + right[i]) * 0.5f;
    }

    private static void interleave(float[] even, float[] odd, float[] out, int at, int count) {
        for (int i = 0; i < count / 2; i++) {
            out[at + 2 * i] = even[i];
            out[at + 2 * i + 1] = odd[i];
        }
        if (count % 2 == 1) out[at + count - 1] = even[count / 2];
    }
}
