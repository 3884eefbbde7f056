package org.stook.comparison.metrics;

import org.stook.imaging.frame.Plane;

/**
 * The fusion quality indices of G. Piella, H. Heijmans, A new quality metric for image fusion, Proc. ICIP 2003, III-173: the
 * universal quality index of a fused image against each of two sources under 8 x 8 windows, shared out by the local variance of
 * the sources. {@link #weighted} is their Q_W (windows weighted by the greater variance), {@link #edgeDependent} their Q_E with
 * alpha = 1, i.e. Q_W of the images times Q_W of their edge images (Prewitt, zeros outside).
 *
 * <p>As in the evaluation of Liu et al. 2020, the universal index is structural similarity with K1 = K2 = 1e-6 on grey codes 0 to
 * 255 ({@link Planes#grey8}).
 */
public final class FusionQuality {
    private static final int WINDOW = 8;
    private static final double K = 1e-6;

    private FusionQuality() {}

    public static double weighted(Plane sourceA, Plane sourceB, Plane fused) {
        Planes.requireSameSize(sourceA, sourceB);
        Planes.requireSameSize(sourceA, fused);
        Windows windows = Windows.uniform(fused.width(), fused.height(), WINDOW);
        return weighted(windows, Planes.codes(sourceA), Planes.codes(sourceB), Planes.codes(fused));
    }

    public static double edgeDependent(Plane sourceA, Plane sourceB, Plane fused) {
        Windows windows = Windows.uniform(fused.width(), fused.height(), WINDOW);
        return weighted(sourceA, sourceB, fused) * weighted(windows, edges(sourceA), edges(sourceB), edges(fused));
    }

    private static double weighted(Windows windows, double[] a, double[] b, double[] f) {
        double[] varianceA = variance(windows, a);
        double[] varianceB = variance(windows, b);
        double[] qualityA = StructuralSimilarity.map(windows, f, a, K, K);
        double[] qualityB = StructuralSimilarity.map(windows, f, b, K, K);
        double sum = 0;
        double weights = 0;
        for (int i = 0; i < varianceA.length; i++) {
            boolean flat = varianceA[i] + varianceB[i] == 0;
            double va = flat ? 0.5 : varianceA[i];
            double vb = flat ? 0.5 : varianceB[i];
            double share = va / (va + vb);
            double weight = Math.max(va, vb);
            sum += weight * (share * qualityA[i] + (1 - share) * qualityB[i]);
            weights += weight;
        }
        return sum / weights;
    }

    private static double[] variance(Windows windows, double[] image) {
        double[] mean = windows.mean(image);
        double[] out = windows.meanOfProduct(image, image);
        for (int i = 0; i < out.length; i++) out[i] -= mean[i] * mean[i];
        return out;
    }

    private static double[] edges(Plane plane) {
        double[] codes = Planes.codes(plane);
        double[] across = Planes.correlate3(codes, plane.width(), plane.height(), 1, 0, -1, 1, 0, -1, 1, 0, -1);
        double[] down = Planes.correlate3(codes, plane.width(), plane.height(), 1, 1, 1, 0, 0, 0, -1, -1, -1);
        double[] out = new double[codes.length];
        for (int i = 0; i < out.length; i++) out[i] = Math.hypot(across[i], down[i]);
        return out;
    }
}
