package org.stook.imaging.survey;

import java.util.List;
import java.util.stream.IntStream;

/**
 * How far apart in focus the frames are: the mean difference of the logarithms of tile sharpness, over tiles and octaves
 * that hold texture. Along a sweep these differences add up, which is what puts frames in order.
 */
record FocusDistances(int[] frames, double[][] between) {
    private static final double TEXTURED = 4;
    /** Steps beyond these, in usual steps, are chance: a bumped frame seems far from all. */
    private static final double NARROWEST = 0.3;

    private static final double WIDEST = 4;

    static FocusDistances between(List<FrameSurvey> all, int[] frames) {
        int n = frames.length;
        float[][] features = new float[n][];
        for (int i = 0; i < n; i++) features[i] = logarithms(all, frames, i);
        double[][] d = new double[n][n];
        for (int i = 0; i < n; i++) {
            for (int j = 0; j < i; j++) d[i][j] = d[j][i] = meanDifference(features[i], features[j]);
        }
        return new FocusDistances(frames, d);
    }

    int size() {
        return frames.length;
    }

    double at(int i, int j) {
        return between[i][j];
    }

    /** Median of the distances between neighbours as they stand. */
    double usualStep() {
        return Seriation.median(
                IntStream.range(0, size() - 1).mapToDouble(i -> at(i, i + 1)).toArray());
    }

    /** Where the frames lie along a path if distances add up, in usual steps, the first at 0. */
    double[] along(int[] path) {
        double[] steps = new double[path.length - 1];
        for (int i = 0; i < steps.length; i++) steps[i] = at(path[i], path[i + 1]);
        double usual = Seriation.median(steps);
        double[] places = new double[path.length];
        for (int i = 0; i < steps.length; i++) {
            double step = usual > 0 ? steps[i] / usual : 1;
            places[i + 1] = places[i] + Math.min(WIDEST, Math.max(NARROWEST, step));
        }
        return places;
    }

    private static float[] logarithms(List<FrameSurvey> all, int[] frames, int i) {
        FrameSurvey f = all.get(frames[i]);
        int tiles = f.tiles();
        float[] result = new float[tiles * f.octaves().size()];
        for (int k = 0; k < f.octaves().size(); k++) {
            float floor = 0;
            for (int g : frames) floor = Math.max(floor, all.get(g).floors()[k]);
            for (int t = 0; t < tiles; t++) {
                float best = 0;
                for (int g : frames) best = Math.max(best, all.get(g).octaves().get(k)[t]);
                result[k * tiles + t] = best < TEXTURED * floor
                        ? Float.NaN
                        : (float) Math.log(f.octaves().get(k)[t] + floor);
            }
        }
        return result;
    }

    private static double meanDifference(float[] a, float[] b) {
        double sum = 0;
        int count = 0;
        for (int i = 0; i < a.length; i++) {
            if (Float.isNaN(a[i])) continue;
            sum += Math.abs(a[i] - b[i]);
            count++;
        }
        return count == 0 ? 0 : sum / count;
    }
}
