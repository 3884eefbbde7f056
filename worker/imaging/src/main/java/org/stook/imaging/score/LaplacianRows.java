package org.stook.imaging.score;

import org.stook.imaging.frame.Plane;

/** Squares of the Laplacian of a smoothed plane, row by row from above to below. One thread. */
final class LaplacianRows {
    private final Plane plane;
    private final float[] column;
    private final float[][] smooth;
    private final float[] squares;
    private int next = Integer.MIN_VALUE;

    LaplacianRows(Plane plane) {
        this.plane = plane;
        this.column = new float[plane.width()];
        this.smooth = new float[3][plane.width()];
        this.squares = new float[plane.width()];
    }

    /** Row {@code y}, at least 2 away from the border; columns 0, 1 and the last two hold nothing of use. */
    float[] squares(int y) {
        if (y != next) {
            smooth(y - 1);
            smooth(y);
        }
        smooth(y + 1);
        next = y + 1;
        float[] above = smooth[(y - 1) % 3];
        float[] here = smooth[y % 3];
        float[] below = smooth[(y + 1) % 3];
        for (int x = 2; x < squares.length - 2; x++) {
            float l = 4 * here[x] - here[x - 1] - here[x + 1] - above[x] - below[x];
            squares[x] = l * l;
        }
        return squares;
    }

    private void smooth(int y) {
        int w = plane.width();
        float[] in = plane.samples();
        int a = (y - 1) * w;
        int b = y * w;
        int c = (y + 1) * w;
        for (int x = 0; x < w; x++) column[x] = (in[a + x] + in[c + x] + 2 * in[b + x]) * (1 / 16f);
        float[] out = smooth[y % 3];
        for (int x = 1; x < w - 1; x++) out[x] = column[x - 1] + column[x + 1] + 2 * column[x];
    }
}
