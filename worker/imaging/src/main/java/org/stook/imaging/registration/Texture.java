package org.stook.imaging.registration;

import org.stook.imaging.frame.Plane;

/**
 * What the blocks of a plane hold, each with its eight neighbours.
 *
 * @param across blocks along a row
 * @param down blocks along a column
 * @param trackable the smaller eigenvalue of the structure tensor (Shi and Tomasi 1994, Good features to track): how well
 *     the worse of the two directions can be located
 * @param detail sum of the squared Laplacian
 * @param slope sum of the squared gradient
 */
record Texture(int across, int down, float[] trackable, float[] detail, float[] slope) {
    private static final int BLOCK = 8;

    static Texture of(Plane plane) {
        int across = Math.max(1, plane.width() / BLOCK);
        int down = Math.max(1, plane.height() / BLOCK);
        float[] sums = sums(plane, across, down);
        float[] trackable = new float[across * down];
        float[] detail = new float[across * down];
        float[] slope = new float[across * down];
        for (int by = 0; by < down; by++) {
            for (int bx = 0; bx < across; bx++) {
                float[] around = around(sums, across, down, bx, by);
                trackable[by * across + bx] = lesserEigenvalue(around);
                detail[by * across + bx] = around[3] / around[4];
                slope[by * across + bx] = (around[0] + around[2]) / 4 / around[4];
            }
        }
        return new Texture(across, down, trackable, detail, slope);
    }

    /** Pixel in the middle of a block. */
    static int centre(int block) {
        return block * BLOCK + BLOCK / 2;
    }

    float trackable(int bx, int by) {
        return trackable[by * across + bx];
    }

    float detailAt(double x, double y) {
        return detail[blockAt(x, y)];
    }

    float slopeAt(double x, double y) {
        return slope[blockAt(x, y)];
    }

    private int blockAt(double x, double y) {
        int bx = Math.max(0, Math.min(across - 1, (int) (x / BLOCK)));
        int by = Math.max(0, Math.min(down - 1, (int) (y / BLOCK)));
        return by * across + bx;
    }

    /** For each block the sums of gx gx, gx gy, gy gy and the squared Laplacian. */
    private static float[] sums(Plane plane, int across, int down) {
        float[] sums = new float[4 * across * down];
        int w = plane.width();
        for (int y = 1; y < Math.min(plane.height() - 1, down * BLOCK); y++) {
            for (int bx = 0; bx < across; bx++) {
                int from = Math.max(1, bx * BLOCK);
                int to = Math.min(w - 1, (bx + 1) * BLOCK);
                addRun(plane.samples(), w, y * w + from, to - from, sums, 4 * (y / BLOCK * across + bx));
            }
        }
        return sums;
    }

    private static void addRun(float[] s, int w, int at, int length, float[] sums, int b) {
        float xx = 0;
        float xy = 0;
        float yy = 0;
        float ll = 0;
        for (int i = at; i < at + length; i++) {
            float gx = s[i + 1] - s[i - 1];
            float gy = s[i + w] - s[i - w];
            float l = s[i + 1] + s[i - 1] + s[i + w] + s[i - w] - 4 * s[i];
            xx += gx * gx;
            xy += gx * gy;
            yy += gy * gy;
            ll += l * l;
        }
        sums[b] += xx;
        sums[b + 1] += xy;
        sums[b + 2] += yy;
        sums[b + 3] += ll;
    }

    /** The four sums over a block and its neighbours, and how many blocks those are. */
    private static float[] around(float[] sums, int across, int down, int bx, int by) {
        float[] total = new float[5];
        for (int j = Math.max(0, by - 1); j <= Math.min(down - 1, by + 1); j++) {
            for (int i = Math.max(0, bx - 1); i <= Math.min(across - 1, bx + 1); i++) {
                for (int k = 0; k < 4; k++) total[k] += sums[4 * (j * across + i) + k];
                total[4]++;
            }
        }
        return total;
    }

    private static float lesserEigenvalue(float[] t) {
        float half = (t[0] + t[2]) / 2;
        return half - (float) Math.sqrt((t[0] - t[2]) * (t[0] - t[2]) / 4 + t[1] * t[1]);
    }
}
