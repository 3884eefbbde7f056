package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.Plane;

/**
 * One size of one frame, a little smoothed, with the texture of its blocks.
 *
 * <p>Texture is the smaller eigenvalue of the structure tensor (Shi and Tomasi 1994, Good features to track): how well the
 * worse of the two directions can be located there.
 */
final class Level {
    private static final int BLOCK = 8;

    private final Plane plane;
    private final int reduction;
    private final int blocksX;
    private final int blocksY;
    private final float[] texture;

    Level(Plane raw, int reduction) {
        this.plane = smoothed(raw);
        this.reduction = reduction;
        this.blocksX = Math.max(1, plane.width() / BLOCK);
        this.blocksY = Math.max(1, plane.height() / BLOCK);
        this.texture = textureOf(tensors());
    }

    Plane plane() {
        return plane;
    }

    int reduction() {
        return reduction;
    }

    /** The best textured place of each of about {@code across} cells along the long side, {@code margin} from the edge. */
    List<Spot> spots(int across, int margin) {
        int cell = Math.max(2, Math.max(blocksX, blocksY) / across);
        List<Spot> spots = new ArrayList<>();
        for (int cy = 0; cy < blocksY; cy += cell) {
            for (int cx = 0; cx < blocksX; cx += cell) {
                Spot best = bestOf(cx, cy, cell, margin);
                if (best != null) spots.add(best);
            }
        }
        return spots;
    }

    private @org.jspecify.annotations.Nullable Spot bestOf(int cx, int cy, int cell, int margin) {
        Spot best = null;
        for (int by = cy; by < Math.min(blocksY, cy + cell); by++) {
            for (int bx = cx; bx < Math.min(blocksX, cx + cell); bx++) {
                float t = texture[by * blocksX + bx];
                int x = bx * BLOCK + BLOCK / 2;
                int y = by * BLOCK + BLOCK / 2;
                boolean inside =
                        x >= margin && y >= margin && x < plane.width() - margin && y < plane.height() - margin;
                if (inside && t > 0 && (best == null || t > best.texture)) best = new Spot(x, y, t);
            }
        }
        return best;
    }

    /** A textured place: pixel of this level. */
    record Spot(int x, int y, float texture) {}

    private float[] tensors() {
        float[] sums = new float[3 * blocksX * blocksY];
        for (int y = 1; y < Math.min(plane.height() - 1, blocksY * BLOCK); y++) {
            addRow(y, sums, y / BLOCK * blocksX);
        }
        return sums;
    }

    private void addRow(int y, float[] sums, int rowOfBlocks) {
        float[] s = plane.samples();
        int w = plane.width();
        int at = y * w;
        for (int x = 1; x < Math.min(w - 1, blocksX * BLOCK); x++) {
            float gx = s[at + x + 1] - s[at + x - 1];
            float gy = s[at + w + x] - s[at - w + x];
            int b = 3 * (rowOfBlocks + x / BLOCK);
            sums[b] += gx * gx;
            sums[b + 1] += gx * gy;
            sums[b + 2] += gy * gy;
        }
    }

    private float[] textureOf(float[] sums) {
        float[] result = new float[blocksX * blocksY];
        for (int by = 0; by < blocksY; by++) {
            for (int bx = 0; bx < blocksX; bx++) {
                result[by * blocksX + bx] = lesserEigenvalue(sums, bx, by);
            }
        }
        return result;
    }

    private float lesserEigenvalue(float[] sums, int bx, int by) {
        float xx = 0;
        float xy = 0;
        float yy = 0;
        for (int j = Math.max(0, by - 1); j <= Math.min(blocksY - 1, by + 1); j++) {
            for (int i = Math.max(0, bx - 1); i <= Math.min(blocksX - 1, bx + 1); i++) {
                int b = 3 * (j * blocksX + i);
                xx += sums[b];
                xy += sums[b + 1];
                yy += sums[b + 2];
            }
        }
        float half = (xx + yy) / 2;
        return half - (float) Math.sqrt((xx - yy) * (xx - yy) / 4 + xy * xy);
    }

    private static Plane smoothed(Plane in) {
        int w = in.width();
        int h = in.height();
        Plane out = new Plane(w, h);
        float[] s = in.samples();
        float[] o = out.samples();
        float[] column = new float[w];
        for (int y = 0; y < h; y++) {
            int above = Math.max(0, y - 1) * w;
            int below = Math.min(h - 1, y + 1) * w;
            for (int x = 0; x < w; x++) column[x] = (s[above + x] + s[below + x] + 2 * s[y * w + x]) * 0.25f;
            for (int x = 0; x < w; x++) {
                o[y * w + x] = (column[Math.max(0, x - 1)] + column[Math.min(w - 1, x + 1)] + 2 * column[x]) * 0.25f;
            }
        }
        return out;
    }
}
