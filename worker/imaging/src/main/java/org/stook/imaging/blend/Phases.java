package org.stook.imaging.blend;

/**
 * Loops over a tile that is taken apart into its four phases: pixels in even rows and even columns, in even rows and odd
 * columns, in odd rows and even columns, in odd rows and odd columns. Each phase is one array, and so is the tile at half
 * size, all with the same stride; then the filters of {@link Binomial} are loops over a whole tile at once.
 *
 * <p>The compiler makes vector code of loops in which all arrays have one index, or indices that differ by whole vectors. So
 * the stride is a multiple of the longest vector, and what lies one sample to the left or right is first moved.
 *
 * <p>A tile is {@link #COLUMNS} by {@link #ROWS} samples a phase. The outermost two are a margin, in which what comes out is of
 * no use.
 */
final class Phases {
    static final int COUNT = 4;
    /** Samples of a phase that lie beyond the core, at each side. */
    static final int MARGIN = 2;

    static final int COLUMNS = Tile.WIDTH / 2 + 2 * MARGIN;
    static final int ROWS = Tile.HEIGHT / 2 + 2 * MARGIN;
    /** Floats in the longest vector of any processor. */
    private static final int VECTOR = 16;

    static final int STRIDE = (COLUMNS + VECTOR - 1) / VECTOR * VECTOR;
    static final int SIZE = STRIDE * ROWS;
    /** All loops run over the rows between the first and the last. */
    private static final int FROM = STRIDE;

    private static final int TO = SIZE - STRIDE;

    private Phases() {}

    /** What the filters work in. One thread. */
    static final class Space {
        private final float[] even = new float[SIZE];
        private final float[] odd = new float[SIZE];
        private final float[] left = new float[SIZE];
        private final float[] right = new float[SIZE];
    }

    /** The tile at half its size. */
    static void halve(float[][] full, Space space, float[] out) {
        float[] even = space.even;
        float[] odd = space.odd;
        downHalved(full[0], full[2], even);
        downHalved(full[1], full[3], odd);
        float[] left = space.left;
        float[] right = space.right;
        System.arraycopy(even, FROM - 1, left, FROM, TO - FROM);
        System.arraycopy(even, FROM + 1, right, FROM, TO - FROM);
        for (int i = FROM; i < TO; i++) out[i] = left[i] + right[i] + 4 * odd[i] + 6 * even[i];
        System.arraycopy(odd, FROM - 1, left, FROM, TO - FROM);
        for (int i = FROM; i < TO; i++) out[i] = (out[i] + 4 * left[i]) * (1 / 16f);
    }

    private static void downHalved(float[] even, float[] odd, float[] out) {
        for (int i = FROM; i < TO; i++) {
            out[i] = (even[i - STRIDE] + even[i + STRIDE] + 4 * (odd[i - STRIDE] + odd[i]) + 6 * even[i]) * (1 / 16f);
        }
    }

    /** A tile of half size at its full size. */
    static void expand(float[] half, Space space, float[][] out) {
        float[] line = space.even;
        for (int i = FROM; i < TO; i++) {
            line[i] = (half[i - STRIDE] + half[i + STRIDE] + 6 * half[i]) * 0.125f;
        }
        across(space, out[0], out[1]);
        for (int i = FROM; i < TO; i++) line[i] = (half[i] + half[i + STRIDE]) * 0.5f;
        across(space, out[2], out[3]);
    }

    private static void across(Space space, float[] even, float[] odd) {
        float[] here = space.even;
        float[] left = space.left;
        float[] right = space.right;
        System.arraycopy(here, FROM - 1, left, FROM, TO - FROM);
        System.arraycopy(here, FROM + 1, right, FROM, TO - FROM);
        for (int i = FROM; i < TO; i++) even[i] = (left[i] + right[i] + 6 * here[i]) * 0.125f;
        for (int i = FROM; i < TO; i++) odd[i] = (here[i] + right[i]) * 0.5f;
    }

    /** The fourth power of {@code slope * guide + offset}, kept within {@code least} and 1, in place of the offset. */
    static void fourthPower(float[] slope, float[] guide, float[] offset, float least) {
        for (int i = FROM; i < TO; i++) {
            float v = Math.max(least, Math.min(1, slope[i] * guide[i] + offset[i]));
            float squared = v * v;
            offset[i] = squared * squared;
        }
    }

    /** {@code near} squared times what {@code claim} is more than {@code -least}, in place of near. */
    static void weigh(float[] near, float[] claim, float least) {
        for (int i = FROM; i < TO; i++) near[i] = near[i] * near[i] * (claim[i] + least);
    }

    static void add(float[] in, float[] sum) {
        for (int i = FROM; i < TO; i++) sum[i] += in[i];
    }

    static void addProduct(float[] weight, float[] in, float[] sum) {
        for (int i = FROM; i < TO; i++) sum[i] += weight[i] * in[i];
    }

    /** Adds a band, which is what the full tile has more than the enlarged half. */
    static void addBand(float[] weight, float[] full, float[] enlarged, float[] sum) {
        for (int i = FROM; i < TO; i++) sum[i] += weight[i] * (full[i] - enlarged[i]);
    }
}
