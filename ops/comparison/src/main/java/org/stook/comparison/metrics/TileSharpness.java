package org.stook.comparison.metrics;

import java.util.List;
import org.stook.imaging.frame.Plane;

/**
 * How sharp an image is, tile by tile: the root mean square of the gradient (Sobel, per pixel) of the image smoothed by a
 * Gaussian of 1 px, so that noise counts for little. Common practice (gradient energy, "Tenengrad"; J. M. Tenenbaum 1970).
 *
 * @param columns tiles across
 * @param values row-major, in full scale per pixel
 */
public record TileSharpness(int columns, double[] values) {
    /** Least sharpness of a tile that is judged: one 8-bit code a pixel. Below, the gradient may be all noise. */
    private static final double TEXTURED = 1.0 / 255;

    /** Pixels at the rim left out, where the kernels lack neighbours. */
    private static final int RIM = 4;

    private static final double[] SMOOTH = {0.006, 0.061, 0.242, 0.382, 0.242, 0.061, 0.006};

    public static TileSharpness of(Plane plane, int tile) {
        int w = plane.width();
        int h = plane.height();
        double[] smooth = new double[w * h];
        double[] inner = new Windows(w, h, SMOOTH).mean(Planes.codes(plane));
        for (int y = 3; y < h - 3; y++) System.arraycopy(inner, (y - 3) * (w - 6), smooth, y * w + 3, w - 6);
        double[] across = Planes.correlate3(smooth, w, h, -1, 0, 1, -2, 0, 2, -1, 0, 1);
        double[] down = Planes.correlate3(smooth, w, h, -1, -2, -1, 0, 0, 0, 1, 2, 1);
        int columns = (w - 2 * RIM) / tile;
        double[] values = new double[columns * ((h - 2 * RIM) / tile)];
        for (int t = 0; t < values.length; t++) {
            double sum = 0;
            for (int y = 0; y < tile; y++) {
                int row = (RIM + t / columns * tile + y) * w + RIM + t % columns * tile;
                for (int x = 0; x < tile; x++) {
                    sum += across[row + x] * across[row + x] + down[row + x] * down[row + x];
                }
            }
            values[t] = Math.sqrt(sum / (tile * tile)) / (8 * 255);
        }
        return new TileSharpness(columns, values);
    }

    /** For each tile the greatest of several images of one size. */
    public static TileSharpness best(List<TileSharpness> images) {
        double[] best = new double[images.get(0).values.length];
        for (TileSharpness image : images) {
            for (int t = 0; t < best.length; t++) best[t] = Math.max(best[t], image.values[t]);
        }
        return new TileSharpness(images.get(0).columns, best);
    }

    /** Share (0 to 1) of the textured tiles in which this image has at least {@code ratio} of the best one's sharpness. */
    public double shareReaching(double ratio, TileSharpness best) {
        int judged = 0;
        int reached = 0;
        for (int t = 0; t < values.length; t++) {
            if (best.values[t] < TEXTURED) continue;
            judged++;
            if (values[t] >= ratio * best.values[t]) reached++;
        }
        return reached / (double) judged;
    }

    /** How many tiles of this image are sharp enough to be judged. */
    public int textured() {
        int n = 0;
        for (double v : values) if (v >= TEXTURED) n++;
        return n;
    }
}
