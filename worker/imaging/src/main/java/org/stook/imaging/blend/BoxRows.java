package org.stook.imaging.blend;

/**
 * Means over square windows of several planes that need not exist as a whole, row by row from above to below, mirrored at
 * the borders. One thread.
 */
final class BoxRows {
    private final int height;
    private final int radius;
    private final Source source;
    private final float[][] lines;
    private final float[][][] ring;
    private final float[] padded;
    private final float[] moved;
    private final float[][] means;
    private int next = Integer.MIN_VALUE;

    /** Where the planes come from. */
    interface Source {
        /** Fills one line a plane with row {@code y}. */
        void read(int y, float[][] lines);
    }

    BoxRows(int width, int height, int radius, int planes, Source source) {
        this.height = height;
        this.radius = radius;
        this.source = source;
        this.lines = new float[planes][width];
        this.ring = new float[planes][2 * radius + 1][width];
        this.padded = new float[width + 2 * radius];
        this.moved = new float[width];
        this.means = new float[planes][width];
    }

    /** The means along row {@code y}, one line a plane; valid until the next call. */
    float[][] at(int y) {
        if (y != next) for (int r = y - radius; r < y + radius; r++) take(r);
        take(y + radius);
        next = y + 1;
        float scale = 1f / ((2 * radius + 1) * (2 * radius + 1));
        for (int p = 0; p < means.length; p++) {
            float[] out = means[p];
            System.arraycopy(ring[p][0], 0, out, 0, out.length);
            for (int k = 1; k < ring[p].length; k++) add(ring[p][k], out);
            for (int x = 0; x < out.length; x++) out[x] *= scale;
        }
        return means;
    }

    private void take(int row) {
        source.read(Binomial.mirror(row, height), lines);
        int slot = Math.floorMod(row, 2 * radius + 1);
        for (int p = 0; p < lines.length; p++) sumAcross(lines[p], ring[p][slot]);
    }

    private void sumAcross(float[] in, float[] out) {
        int w = in.length;
        System.arraycopy(in, 0, padded, radius, w);
        for (int k = 1; k <= radius; k++) {
            padded[radius - k] = in[Binomial.mirror(-k, w)];
            padded[radius + w - 1 + k] = in[Binomial.mirror(w - 1 + k, w)];
        }
        System.arraycopy(padded, 0, out, 0, w);
        for (int k = 1; k <= 2 * radius; k++) {
            // Loops that look aside are not made vector code of.
            System.arraycopy(padded, k, moved, 0, w);
            add(moved, out);
        }
    }

    private static void add(float[] in, float[] out) {
        for (int x = 0; x < out.length; x++) out[x] += in[x];
    }
}
