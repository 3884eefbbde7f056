package org.stook.imaging.score;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Luma;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Plane;

/**
 * Keeps, tile by tile, the sharpest that any frame was where it was drawn. A blend need not draw a frame where it is far from
 * sharp.
 */
public final class SharpnessLedger {
    private static final double TEXTURED = 2.0;
    private static final double LEAST_CONTRAST = 1e-3;
    private static final double AS_SHARP = 0.9;

    private final TileSharpness tiles;
    private final int threads;
    private final float[] best;
    private final List<Float> floors = new ArrayList<>();
    private final float[] now;
    private final Queue<float[][]> rooms = new ConcurrentLinkedQueue<>();
    private SoftTiles soft = new SoftTiles(TileSharpness.TILE, 1, new boolean[0]);

    /**
     * @param width of the composite, pixels
     * @param height of the composite
     * @param threads how many threads may be used, at least 1
     */
    public SharpnessLedger(int width, int height, int threads) {
        this.tiles = new TileSharpness(width, height);
        this.threads = threads;
        this.best = new float[tiles.count()];
        this.now = new float[tiles.count()];
        Arrays.fill(now, Float.NaN);
    }

    /** What is added from now on is of another frame. */
    public void nextFrame() {
        settle();
        Arrays.fill(now, Float.NaN);
    }

    /**
     * Measures a part of the present frame. Threads may each add parts of their own.
     *
     * @param part where it lies in the composite
     * @param drawn one picture a channel, in rows; more than three or one beyond that are not looked at
     */
    public void add(Area part, float[][][] drawn) {
        float[][] luma = room(part);
        luma(part, drawn, luma);
        tiles.measure(part, luma, (tile, rms) -> {
            now[tile] = rms;
            best[tile] = Math.max(best[tile], rms);
        });
        rooms.add(luma);
    }

    /** Compares the composite with the sharpest frame of each textured tile. */
    public Coverage compare(Frame composite) {
        settle();
        float[] rms = new float[tiles.count()];
        Parallel.forEach(tiles.rows(), threads, row -> {
            Area part = tiles.around(row);
            float[][] luma = room(part);
            luma(composite, part, luma);
            tiles.measure(part, luma, (tile, value) -> rms[tile] = value);
            rooms.add(luma);
        });
        double noise = median(floors);
        int textured = 0;
        int sharp = 0;
        boolean[] behind = new boolean[rms.length];
        for (int t = 0; t < rms.length; t++) {
            if (best[t] < Math.max(LEAST_CONTRAST, TEXTURED * noise)) continue;
            textured++;
            behind[t] = detail(rms[t], noise) < AS_SHARP * detail(best[t], noise);
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

    /** Notes the tenth percentile over the tiles of a frame: what it shows where it shows nothing. */
    private void settle() {
        float[] sorted = now.clone();
        Arrays.sort(sorted);
        int known = sorted.length;
        while (known > 0 && Float.isNaN(sorted[known - 1])) known--;
        if (known > 0) floors.add(sorted[known / 10]);
    }

    private static double median(List<Float> values) {
        return values.isEmpty() ? 0 : values.stream().sorted().toList().get(values.size() / 2);
    }

    /** Rows for a part's luminance, as many and as long at least; they are used again. */
    private float[][] room(Area part) {
        float[][] free = rooms.poll();
        boolean fits = free != null && free.length >= part.height() && free[0].length >= part.width();
        return fits ? free : new float[part.height()][part.width()];
    }

    private static void luma(Area part, float[][][] drawn, float[][] out) {
        for (int y = 0; y < part.height(); y++) {
            if (drawn.length < 3) System.arraycopy(drawn[0][y], 0, out[y], 0, part.width());
            else Luma.mix(drawn[0][y], drawn[1][y], drawn[2][y], part.width(), out[y]);
        }
    }

    private static void luma(Frame frame, Area part, float[][] out) {
        float[][] lines = new float[frame.channels()][part.width()];
        for (int y = 0; y < part.height(); y++) {
            for (int c = 0; c < lines.length; c++) {
                Plane plane = frame.plane(c);
                int at = (part.y() + y) * plane.width() + part.x();
                System.arraycopy(plane.samples(), at, lines[c], 0, part.width());
            }
            if (lines.length < 3) System.arraycopy(lines[0], 0, out[y], 0, part.width());
            else Luma.mix(lines[0], lines[1], lines[2], part.width(), out[y]);
        }
    }
}
