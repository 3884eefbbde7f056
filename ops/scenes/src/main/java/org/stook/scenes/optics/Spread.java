package org.stook.scenes.optics;

import java.util.Arrays;

/**
 * Gathers the light of one sheet in one tile of a picture: every point spreads over its own disc. The share that the
 * sheet covers comes out as light arrived / light that would have arrived if the sheet went on for ever; thus a
 * slanted surface keeps its brightness and a defocused rim turns see-through.
 */
public final class Spread {
    private static final int CHANNELS = 5;

    private final int width;
    private final int height;
    private final float[] differences;

    /** A tile of this size in pixels. */
    public Spread(int width, int height) {
        this.width = width;
        this.height = height;
        differences = new float[width * height * CHANNELS];
    }

    /** Forgets what was added. */
    public void clear() {
        Arrays.fill(differences, 0);
    }

    /**
     * Spreads one point.
     *
     * @param x column in the tile; may lie outside
     * @param y row in the tile; may lie outside
     * @param radius of the circle of confusion in pixels
     * @param light cover, then red, green and blue times cover
     */
    public void add(int x, int y, double radius, float[] light) {
        DiscKernel kernel = DiscKernel.ofRadius(radius);
        int reach = kernel.reach;
        if (x + reach < 0 || x - reach >= width) return;
        int firstRow = Math.max(-reach, -y);
        int lastRow = Math.min(reach, height - 1 - y);
        for (int row = firstRow; row <= lastRow; row++) {
            int base = (y + row) * width;
            int end = kernel.rowStart[row + reach + 1];
            for (int e = kernel.rowStart[row + reach]; e < end; e++) {
                int col = x + kernel.column[e];
                if (col < width) addTo((base + Math.max(0, col)) * CHANNELS, kernel.weight[e], light);
            }
        }
    }

    private void addTo(int at, float weight, float[] light) {
        differences[at] += weight;
        differences[at + 1] += weight * light[0];
        differences[at + 2] += weight * light[1];
        differences[at + 3] += weight * light[2];
        differences[at + 4] += weight * light[3];
    }

    /** Lays what was gathered over the picture: {@code rgb} holds three values a pixel of this tile, row by row. */
    public void over(float[] rgb) {
        for (int row = 0; row < height; row++) {
            double all = 0;
            double cover = 0;
            double red = 0;
            double green = 0;
            double blue = 0;
            for (int p = row * width; p < (row + 1) * width; p++) {
                int at = p * CHANNELS;
                all += differences[at];
                cover += differences[at + 1];
                red += differences[at + 2];
                green += differences[at + 3];
                blue += differences[at + 4];
                if (cover < 1e-5) continue;
                double through = Math.max(0, 1 - cover / all);
                rgb[3 * p] = (float) (red / all + through * rgb[3 * p]);
                rgb[3 * p + 1] = (float) (green / all + through * rgb[3 * p + 1]);
                rgb[3 * p + 2] = (float) (blue / all + through * rgb[3 * p + 2]);
            }
        }
    }
}
