package org.stook.imaging.slate;

/** Dark and light of a cut: Otsu's threshold (1979, A threshold selection method from gray-level histograms). */
final class Dark {
    private static final int LEVELS = 256;
    /** Ink on paper differs by more than this, folds and shadows by less. */
    private static final int LEAST_CONTRAST = 40;

    private Dark() {}

    /** Marks what is darker than the threshold; nothing where there is too little contrast for ink on paper. */
    static boolean[] mask(GreyPicture cut) {
        int[] counts = new int[LEVELS];
        for (byte level : cut.levels()) counts[level & 0xFF]++;
        boolean[] dark = new boolean[cut.levels().length];
        int threshold = threshold(counts, dark.length);
        if (threshold < 0) return dark;
        for (int i = 0; i < dark.length; i++) dark[i] = (cut.levels()[i] & 0xFF) < threshold;
        return dark;
    }

    private static int threshold(int[] counts, int all) {
        double sum = 0;
        for (int v = 0; v < LEVELS; v++) sum += (double) v * counts[v];
        double below = 0;
        double sumBelow = 0;
        double best = 0;
        int threshold = -1;
        for (int v = 0; v < LEVELS - 1; v++) {
            below += counts[v];
            sumBelow += (double) v * counts[v];
            if (below == 0 || below == all) continue;
            double apart = (sum - sumBelow) / (all - below) - sumBelow / below;
            double between = below * (all - below) * apart * apart;
            if (between > best) {
                best = between;
                threshold = apart >= LEAST_CONTRAST ? v + 1 : -1;
            }
        }
        return threshold;
    }

    /** Marks also all pixels within {@code r} columns and rows of a marked one. */
    static boolean[] spread(boolean[] mask, int width, int height, int r) {
        return columns(rows(mask, width, height, r), width, height, r);
    }

    private static boolean[] rows(boolean[] in, int width, int height, int r) {
        boolean[] out = new boolean[in.length];
        for (int y = 0; y < height; y++) {
            int last = -r - 1;
            int start = y * width;
            for (int x = 0; x < width + r; x++) {
                if (x < width && in[start + x]) last = x;
                int at = x - r;
                if (at >= 0 && last >= at - r) out[start + at] = true;
            }
        }
        return out;
    }

    private static boolean[] columns(boolean[] in, int width, int height, int r) {
        boolean[] out = new boolean[in.length];
        int[] last = new int[width];
        java.util.Arrays.fill(last, -r - 1);
        for (int y = 0; y < height + r; y++) {
            int at = y - r;
            for (int x = 0; x < width; x++) {
                if (y < height && in[y * width + x]) last[x] = y;
                if (at >= 0 && last[x] >= at - r) out[at * width + x] = true;
            }
        }
        return out;
    }

    /** How often a line through the cut changes between dark and light, the mean of lines along the busier direction. */
    static double changes(GreyPicture cut) {
        boolean[] dark = mask(cut);
        int width = cut.width();
        int height = cut.height();
        long along = 0;
        long down = 0;
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                int i = y * width + x;
                if (x > 0 && dark[i] != dark[i - 1]) along++;
                if (y > 0 && dark[i] != dark[i - width]) down++;
            }
        }
        return Math.max((double) along / height, (double) down / width);
    }
}
