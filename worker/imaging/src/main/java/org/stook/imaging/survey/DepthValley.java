package org.stook.imaging.survey;

/**
 * Tells a subject that goes on beyond the end of a sweep, and out of the picture, from something else that stands off: between
 * a subject and what stands off there are depths where nothing lies, and where the sweep was broken off there are none.
 */
final class DepthValley {
    /** Bins of half a step; the first one lies half a step inside the sweep, where a well-planned subject already ends. */
    private static final int BINS_PER_STEP = 2;

    private static final int INSIDE = 1;
    private static final int BINS = 14;
    /** Beyond a valley density rises to so many times its floor, and to so many tiles. */
    private static final int RISE = 3;

    private static final int LEAST_RISE = 8;

    private DepthValley() {}

    /**
     * Share of the tiles that lie beyond the end of the sweep without a valley before them, 0 to 1.
     *
     * @param beyond for each tile how far it lies outside the last frame, in usual steps, negative inside; NaN where unknown
     */
    static double share(double[] beyond) {
        int[] bins = new int[BINS];
        int known = 0;
        for (double z : beyond) {
            if (Double.isNaN(z)) continue;
            known++;
            int bin = (int) Math.floor(z * BINS_PER_STEP + 0.5) + INSIDE;
            if (bin >= 0) bins[Math.min(BINS - 1, bin)]++;
        }
        int open = 0;
        for (int b = INSIDE + 1; b < valley(bins); b++) open += bins[b];
        return known == 0 ? 0 : (double) open / known;
    }

    /** The lowest bin before density rises again; behind the last bin if it does not. */
    private static int valley(int[] bins) {
        int lowest = 0;
        for (int b = 1; b < bins.length; b++) {
            if (bins[b] < bins[lowest]) lowest = b;
            else if (bins[b] >= Math.max(LEAST_RISE, RISE * bins[lowest])) return lowest;
        }
        return bins.length;
    }
}
