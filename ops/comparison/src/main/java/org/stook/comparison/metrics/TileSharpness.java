package org.stook.comparison.metrics;

import org.stook.imaging.frame.Plane;

/**
 * How sharp an image is, tile by tile: the root mean square of the Laplacian of the image smoothed by a Gaussian of 1 px (energy of
 * the Laplacian: M. Subbarao, T.-S. Choi, A. Nikzad, Optical Engineering 32(11) (1993) 2824-2836). The second derivative, because
 * the edge of a bright thing out of focus spreads into flat tiles beside it and there counts as sharpness with the first; the
 * smoothing, because of noise.
 *
 * @param values row-major, in full scale per square pixel
 * @param levels mean of each tile, full scale
 */
public record TileSharpness(double[] values, double[] levels) {
    /** Pixels at the rim left out, where the kernels lack neighbours. */
    private static final int RIM = 4;

    private static final double[] SMOOTH = {0.006, 0.061, 0.242, 0.382, 0.242, 0.061, 0.006};

    /** @param tile side, pixels; what is left over at the right and at the bottom is not measured */
    public static TileSharpness of(Plane plane, int tile) {
        int w = plane.width();
        int h = plane.height();
        double[] smooth = new double[w * h];
        double[] inner = new Windows(w, h, SMOOTH).mean(Planes.codes(plane));
        for (int y = 3; y < h - 3; y++) System.arraycopy(inner, (y - 3) * (w - 6), smooth, y * w + 3, w - 6);
        double[] curvature = Planes.correlate3(smooth, w, h, 0, 1, 0, 1, -4, 1, 0, 1, 0);
        int columns = (w - 2 * RIM) / tile;
        int tiles = columns * ((h - 2 * RIM) / tile);
        TileSharpness out = new TileSharpness(new double[tiles], new double[tiles]);
        for (int t = 0; t < tiles; t++) {
            double squares = 0;
            double sum = 0;
            for (int y = 0; y < tile; y++) {
                int row = (RIM + t / columns * tile + y) * w + RIM + t % columns * tile;
                for (int i = row; i < row + tile; i++) {
                    squares += curvature[i] * curvature[i];
                    sum += smooth[i];
                }
            }
            out.values[t] = Math.sqrt(squares / (tile * tile)) / 255;
            out.levels[t] = sum / (tile * tile) / 255;
        }
        return out;
    }

    /** Sharpness in parts of the tile's own mean, which does not change when a pipeline equalises exposures. */
    double contrast(int tile) {
        return values[tile] / Math.max(levels[tile], 1 / 255.0);
    }
}
