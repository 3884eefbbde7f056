package org.stook.imaging.score;

import java.util.Arrays;
import org.stook.imaging.frame.Frame;

/** Keeps, tile by tile, the sharpest any placed frame was. */
public final class SharpnessLedger {
    private static final double TEXTURED = 2.0;
    private static final double LEAST_CONTRAST = 1e-3;
    private static final double AS_SHARP = 0.9;

    private final int threads;
    private float @org.jspecify.annotations.Nullable [] best;
    private float[] floors = {};
    private int frames;
    private SoftTiles soft = new SoftTiles(TileSharpness.TILE, 1, new boolean[0]);

    /** @param threads how many threads may be used, at least 1 */
    public SharpnessLedger(int threads) {
        this.threads = threads;
    }

    /** @param placed a frame in the common area, or its luminance; only lent */
    public void add(Frame placed) {
        TileSharpness tiles = TileSharpness.of(placed.luma(), threads);
        if (best == null) best = new float[tiles.count()];
        for (int t = 0; t < tiles.count(); t++) best[t] = Math.max(best[t], tiles.rms(t));
        floors = Arrays.copyOf(floors, frames + 1);
        floors[frames++] = floorOf(tiles);
    }

    /** Compares the composite with the sharpest frame of each textured tile. */
    public Coverage compare(Frame composite) {
        if (best == null) throw new IllegalStateException("no frame was added");
        float[] sharpest = best;
        TileSharpness tiles = TileSharpness.of(composite.luma(), threads);
        double noise = median(floors);
        int textured = 0;
        int sharp = 0;
        boolean[] behind = new boolean[tiles.count()];
        for (int t = 0; t < tiles.count(); t++) {
            if (sharpest[t] < Math.max(LEAST_CONTRAST, TEXTURED * noise)) continue;
            textured++;
            behind[t] = detail(tiles.rms(t), noise) < AS_SHARP * detail(sharpest[t], noise);
            if (!behind[t]) sharp++;
        }
        soft = new SoftTiles(TileSharpness.TILE, tiles.columns(), behind);
        return new Coverage(textured, sharp);
    }

    /** Where the composite compared last stays behind. */
    public SoftTiles soft() {
        return soft;
    }

    /** Blended flat areas are less noisy than a frame, so only what stands above the noise is compared. */
    private static double detail(double rms, double noise) {
        return Math.sqrt(Math.max(0, rms * rms - noise * noise));
    }

    /** The tenth percentile over the tiles: what a frame shows where it shows nothing. */
    private static float floorOf(TileSharpness tiles) {
        float[] sorted = new float[tiles.count()];
        for (int t = 0; t < sorted.length; t++) sorted[t] = tiles.rms(t);
        Arrays.sort(sorted);
        return sorted[sorted.length / 10];
    }

    private static double median(float[] values) {
        float[] sorted = values.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length / 2];
    }
}
