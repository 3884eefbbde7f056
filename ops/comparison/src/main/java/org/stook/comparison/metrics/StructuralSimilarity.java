package org.stook.comparison.metrics;

import org.stook.imaging.frame.Plane;

/**
 * Structural similarity: Z. Wang, A. C. Bovik, H. R. Sheikh, E. P. Simoncelli, IEEE Transactions on Image Processing 13(4)
 * (2004) 600-612. Window 11 x 11, Gaussian of 1.5 px; K1 = 0.01, K2 = 0.03; the mean over every place where the window fits.
 */
public final class StructuralSimilarity {
    private StructuralSimilarity() {}

    /** Mean structural similarity, 1 for equal images. */
    public static double of(Plane a, Plane b) {
        Planes.requireSameSize(a, b);
        Windows windows = Windows.gaussian(a.width(), a.height(), 11, 1.5);
        double sum = 0;
        double[] map = map(windows, Planes.codes(a), Planes.codes(b), 0.01, 0.03);
        for (double s : map) sum += s;
        return sum / map.length;
    }

    /** The similarity at every window; images in codes 0 to 255. */
    static double[] map(Windows windows, double[] a, double[] b, double k1, double k2) {
        double c1 = k1 * 255 * k1 * 255;
        double c2 = k2 * 255 * k2 * 255;
        double[] meanA = windows.mean(a);
        double[] meanB = windows.mean(b);
        double[] squareA = windows.meanOfProduct(a, a);
        double[] squareB = windows.meanOfProduct(b, b);
        double[] product = windows.meanOfProduct(a, b);
        double[] out = new double[meanA.length];
        for (int i = 0; i < out.length; i++) {
            double aa = meanA[i] * meanA[i];
            double bb = meanB[i] * meanB[i];
            double ab = meanA[i] * meanB[i];
            double spread = squareA[i] - aa + squareB[i] - bb;
            out[i] = (2 * ab + c1) * (2 * (product[i] - ab) + c2) / ((aa + bb + c1) * (spread + c2));
        }
        return out;
    }
}
