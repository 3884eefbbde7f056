package org.stook.imaging.blend;

/**
 * Loops over a tile that is taken apart into its four phases: pixels in even rows and even columns, in even rows and odd
 * columns, in odd rows and even columns, in odd rows and odd columns. Each phase is one array, and so is the tile at half
 * size, all with the same stride; then the filters of {@link Binomial} are loops over a whole tile at once in which every
 * array has the same index but for constants, which is what the compiler makes vector code of.
 *
 * <p>A tile is {@link #STRIDE} by {@link #ROWS} samples a phase. The outermost two are a margin, in which what comes out is of
 * no use.
 */
final class Phases {
    static final int COUNT = 4;
    /** Samples of a phase that lie beyond the core, at each side. */
    static final int MARGIN = 2;

    static final int STRIDE = Tile.WIDTH / 2 + 2 * MARGIN;
    static final int ROWS = Tile.HEIGHT / 2 + 2 * MARGIN;
    static final int SIZE = STRIDE * ROWS;
    /** All loops run over these. */
    static final int FROM = STRIDE + 1;

    static final int TO = SIZE - STRIDE - 1;

    private Phases() {}

    /** The tile at half its size. */
    static void halve(float[][] full, float[] scratch, float[] odd, float[] out) {
        downHalved(full[0], full[2], scratch);
        downHalved(full[1], full[3], odd);
        for (int i = FROM; i < TO; i++) {
            out[i] = (scratch[i - 1] + scratch[i + 1] + 4 * (odd[i - 1] + odd[i]) + 6 * scratch[i]) * (1 / 16f);
        }
    }

    private static void downHalved(float[] even, float[] odd, float[] out) {
        for (int i = STRIDE; i < SIZE - STRIDE; i++) {
            out[i] = (even[i - STRIDE] + even[i + STRIDE] + 4 * (odd[i - STRIDE] + odd[i]) + 6 * even[i]) * (1 / 16f);
        }
    }

    /** A tile of half size at its full size. */
    static void expand(float[] half, float[] scratch, float[][] out) {
        for (int i = STRIDE; i < SIZE - STRIDE; i++) {
            scratch[i] = (half[i - STRIDE] + half[i + STRIDE] + 6 * half[i]) * 0.125f;
        }
        across(scratch, out[0], out[1]);
        for (int i = STRIDE; i < SIZE - STRIDE; i++) scratch[i] = (half[i] + half[i + STRIDE]) * 0.5f;
        across(scratch, out[2], out[3]);
    }

    private static void across(float[] in, float[] even, float[] odd) {
        for (int i = FROM; i < TO; i++) even[i] = (in[i - 1] + in[i + 1] + 6 * in[i]) * 0.125f;
        for (int i = FROM; i < TO; i++) odd[i] = (in[i] + in[i + 1]) * 0.5f;
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
