package org.stook.imaging.score;

/** Squares of the Laplacian of a smoothed picture, row by row from above to below. One thread. */
final class LaplacianRows {
    private final float[][] picture;
    private final float[] column;
    private final float[] left;
    private final float[] right;
    private final float[][] smooth;
    private final float[] squares;
    private int next = Integer.MIN_VALUE;

    /** @param picture rows of samples */
    LaplacianRows(float[][] picture) {
        int width = picture[0].length;
        this.picture = picture;
        this.column = new float[width];
        this.left = new float[width];
        this.right = new float[width];
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
        moveAside(here);
        square(above, here, below);
        return squares;
    }

    private void square(float[] above, float[] here, float[] below) {
        float[] l = left;
        float[] r = right;
        float[] out = squares;
        for (int x = 0; x < out.length; x++) {
            float laplacian = 4 * here[x] - l[x] - r[x] - above[x] - below[x];
            out[x] = laplacian * laplacian;
        }
    }

    /** Loops that look one sample aside are not made vector code of. */
    private void moveAside(float[] line) {
        System.arraycopy(line, 0, left, 1, line.length - 1);
        System.arraycopy(line, 1, right, 0, line.length - 1);
    }

    private void smooth(int y) {
        float[] above = picture[y - 1];
        float[] here = picture[y];
        float[] below = picture[y + 1];
        for (int x = 0; x < column.length; x++) column[x] = (above[x] + below[x] + 2 * here[x]) * (1 / 16f);
        moveAside(column);
        across(smooth[y % 3]);
    }

    private void across(float[] out) {
        float[] l = left;
        float[] r = right;
        float[] c = column;
        for (int x = 0; x < out.length; x++) out[x] = l[x] + r[x] + 2 * c[x];
    }
}
