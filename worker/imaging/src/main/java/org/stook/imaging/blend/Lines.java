package org.stook.imaging.blend;

/** Small pictures as rows of samples: filters of {@link Binomial} over them, written for lines that share one index. */
final class Lines {
    private Lines() {}

    /** Row {@code y} of the picture at half its size. */
    static void halve(float[][] fine, int y, float[] line, float[] out) {
        int h = fine.length;
        float[] a = fine[Binomial.mirror(2 * y - 2, h)];
        float[] b = fine[Binomial.mirror(2 * y - 1, h)];
        float[] c = fine[2 * y];
        float[] d = fine[Binomial.mirror(2 * y + 1, h)];
        float[] e = fine[Binomial.mirror(2 * y + 2, h)];
        for (int x = 0; x < line.length; x++) line[x] = (a[x] + e[x] + 4 * (b[x] + d[x]) + 6 * c[x]) * (1 / 16f);
        Binomial.halve(line, line.length, out, 0);
    }

    /** Row {@code y} of the picture at twice its size; {@code line} is as long as its rows, {@code out} at most twice that. */
    static void expand(float[][] coarse, int y, float[] line, float[] out) {
        int j = y / 2;
        float[] here = coarse[j];
        float[] below = coarse[Math.min(j + 1, coarse.length - 1)];
        if (y % 2 == 0) {
            float[] above = coarse[Math.max(j - 1, 0)];
            for (int x = 0; x < line.length; x++) line[x] = (above[x] + below[x] + 6 * here[x]) * 0.125f;
        } else {
            for (int x = 0; x < line.length; x++) line[x] = (here[x] + below[x]) * 0.5f;
        }
        Binomial.widen(line, line.length, out);
    }

    /** The picture at twice its size. */
    static float[][] expand(float[][] coarse) {
        int width = coarse[0].length;
        float[] line = new float[width];
        float[][] out = new float[2 * coarse.length][2 * width];
        for (int y = 0; y < out.length; y++) expand(coarse, y, line, out[y]);
        return out;
    }
}
