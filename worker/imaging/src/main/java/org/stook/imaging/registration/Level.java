package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Plane;

/** One size of one frame, a little smoothed, with the texture and the detail of its blocks. */
final class Level {
    /** White noise keeps about this share of its energy when a plane is halved. */
    private static final double NOISE_LEFT = 0.1;
    /** The share of blocks that hold nothing but noise. */
    private static final double FLATTEST = 0.05;

    /** Noise in the squared slope per noise in the squared Laplacian. */
    private static final double SLOPE_NOISE = 0.1;

    private final Plane plane;
    private final int reduction;
    private final Texture texture;
    private final double noise;

    private Level(Plane raw, int reduction, double noise) {
        this.plane = smoothed(raw);
        this.reduction = reduction;
        this.texture = Texture.of(plane);
        this.noise = noise < 0 ? flattest(texture.detail()) : noise;
    }

    /** The finest level of a frame: its flattest blocks tell the noise. */
    static Level finest(Plane raw, int reduction) {
        return new Level(raw, reduction, -1);
    }

    /** The level of half this size, from this one's unsmoothed plane halved. */
    Level coarser(Plane half) {
        return new Level(half, 2 * reduction, NOISE_LEFT * noise);
    }

    Plane plane() {
        return plane;
    }

    int reduction() {
        return reduction;
    }

    /** How far the finest detail around a place rises above the noise, as a ratio of energies. */
    double detailOverNoise(double x, double y) {
        return noise <= 0 ? Double.POSITIVE_INFINITY : texture.detailAt(x, y) / noise;
    }

    /** Typical angular frequency around a place, radians per pixel of this level, noise left out. */
    double frequency(double x, double y) {
        double detail = texture.detailAt(x, y) - noise;
        double slope = texture.slopeAt(x, y) - SLOPE_NOISE * noise;
        return detail <= 0 || slope <= 0 ? 0 : Math.sqrt(detail / slope);
    }

    /** The best textured place of each of about {@code across} cells along the long side, {@code margin} from the edge. */
    List<Spot> spots(int across, int margin) {
        int cell = Math.max(2, Math.max(texture.across(), texture.down()) / across);
        List<Spot> spots = new ArrayList<>();
        for (int cy = 0; cy < texture.down(); cy += cell) {
            for (int cx = 0; cx < texture.across(); cx += cell) {
                Spot best = bestOf(cx, cy, cell, margin);
                if (best != null) spots.add(best);
            }
        }
        return spots;
    }

    private @Nullable Spot bestOf(int cx, int cy, int cell, int margin) {
        Spot best = null;
        for (int by = cy; by < Math.min(texture.down(), cy + cell); by++) {
            for (int bx = cx; bx < Math.min(texture.across(), cx + cell); bx++) {
                Spot spot = new Spot(Texture.centre(bx), Texture.centre(by), texture.trackable(bx, by));
                boolean inside = spot.x >= margin
                        && spot.y >= margin
                        && spot.x < plane.width() - margin
                        && spot.y < plane.height() - margin;
                if (inside && spot.texture > 0 && (best == null || spot.texture > best.texture)) best = spot;
            }
        }
        return best;
    }

    /** A textured place: pixel of this level. */
    record Spot(int x, int y, float texture) {}

    /** Blocks without any detail are clipped or drawn, and tell nothing of noise. */
    private static double flattest(float[] detail) {
        float[] sorted = detail.clone();
        Arrays.sort(sorted);
        int clipped = 0;
        while (clipped < sorted.length && sorted[clipped] <= 0) clipped++;
        return clipped == sorted.length ? 0 : sorted[clipped + (int) (FLATTEST * (sorted.length - 1 - clipped))];
    }

    private static Plane smoothed(Plane in) {
        int w = in.width();
        int h = in.height();
        Plane out = new Plane(w, h);
        float[] s = in.samples();
        float[] o = out.samples();
        float[] column = new float[w];
        float[] left = new float[w];
        float[] right = new float[w];
        float[] line = new float[w];
        for (int y = 0; y < h; y++) {
            int above = Math.max(0, y - 1) * w;
            int here = y * w;
            int below = Math.min(h - 1, y + 1) * w;
            for (int x = 0; x < w; x++) column[x] = (s[above + x] + s[below + x] + 2 * s[here + x]) * 0.25f;
            // Loops that look one sample aside, or into a plane, are not made vector code of.
            left[0] = column[0];
            System.arraycopy(column, 0, left, 1, w - 1);
            right[w - 1] = column[w - 1];
            System.arraycopy(column, 1, right, 0, w - 1);
            for (int x = 0; x < w; x++) line[x] = (left[x] + right[x] + 2 * column[x]) * 0.25f;
            System.arraycopy(line, 0, o, here, w);
        }
        return out;
    }
}
