package org.stook.imaging.blend;

/** Small pictures as rows of samples: filters of {@link Binomial} over them, written for lines that share one index. */
final class Lines {
    private Lines() {}

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
}
