package org.stook.comparison.published;

/** K. He, J. Sun, X. Tang, Guided image filtering, IEEE TPAMI 35(6) (2013) 1397-1409, grey guide. */
final class GuidedFilter {
    private GuidedFilter() {}

    static double[] apply(double[] guide, double[] in, int w, int h, int radius, double eps) {
        double[] meanG = Filters.boxMean(guide, w, h, radius);
        double[] meanP = Filters.boxMean(in, w, h, radius);
        double[] meanGp = Filters.boxMean(times(guide, in), w, h, radius);
        double[] meanGg = Filters.boxMean(times(guide, guide), w, h, radius);
        double[] a = new double[in.length];
        double[] b = new double[in.length];
        for (int i = 0; i < in.length; i++) {
            a[i] = (meanGp[i] - meanG[i] * meanP[i]) / (meanGg[i] - meanG[i] * meanG[i] + eps);
            b[i] = meanP[i] - a[i] * meanG[i];
        }
        double[] meanA = Filters.boxMean(a, w, h, radius);
        double[] meanB = Filters.boxMean(b, w, h, radius);
        double[] out = new double[in.length];
        for (int i = 0; i < out.length; i++) out[i] = meanA[i] * guide[i] + meanB[i];
        return out;
    }

    private static double[] times(double[] a, double[] b) {
        double[] out = new double[a.length];
        for (int i = 0; i < out.length; i++) out[i] = a[i] * b[i];
        return out;
    }
}
