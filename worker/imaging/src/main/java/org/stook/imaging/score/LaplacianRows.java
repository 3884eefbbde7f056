package org.stook.imaging.score;

/** Squares of the Laplacian of a smoothed picture, row by row from above to below. One thread. */
final class LaplacianRows {
    private final float[][] picture;
    private final float[] column;
    private final float[][] smooth;
    private final float[] squares;
    private int next = Integer.MIN_VALUE;

    /** @param picture rows of samples */
    LaplacianRows(float[][] picture) {
        int width = picture[0].length;
        this.picture = picture;
        this.column = new float[width];
        this.smooth = new float[3][width];
        this.squares = new float[width];
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
        float[] above = picture[y - 1];
        float[] here = picture[y];
        float[] below = picture[y + 1];
        for (int x = 0; x < column.length; x++) column[x] = (above[x] + below[x] + 2 * here[x]) * (1 / 16f);
        float[] out = smooth[y % 3];
        for (int x = 1; x < out.length - 1; x++) out[x] = column[x - 1] + column[x + 1] + 2 * column[x];
    }
}
