package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Sharpness of one tile in one octave over the frames of a sweep.
 *
 * @param tile index
 * @param octave 0 is the finest
 * @param log natural logarithm of the energy in each frame
 * @param weight how far that rises above the noise, 0 to 1
 */
record SharpnessCurve(int tile, int octave, float[] log, float[] weight) {
    private static final double TEXTURED = 4;
    private static final int STRONGEST = 1000;

    /** The curves that rise and fall most, of the tiles that show texture at all. */
    static List<SharpnessCurve> strongest(List<FrameSurvey> all, int[] order) {
        List<SharpnessCurve> curves = new ArrayList<>();
        FrameSurvey first = all.get(order[0]);
        for (int k = 0; k < first.octaves().size(); k++) {
            float floor = 0;
            for (int f : order) floor = Math.max(floor, all.get(f).floors()[k]);
            for (int t = 0; t < first.tiles(); t++) {
                float best = 0;
                for (int f : order) best = Math.max(best, all.get(f).octaves().get(k)[t]);
                if (best > TEXTURED * floor) curves.add(of(all, order, t, k, floor));
            }
        }
        // A stable sort: of equal curves the earlier tile comes first.
        curves.sort(Comparator.comparingDouble(SharpnessCurve::span).reversed());
        return List.copyOf(curves.subList(0, Math.min(STRONGEST, curves.size())));
    }

    private static SharpnessCurve of(List<FrameSurvey> all, int[] order, int tile, int octave, float floor) {
        float[] log = new float[order.length];
        float[] weight = new float[order.length];
        for (int i = 0; i < order.length; i++) {
            float e = all.get(order[i]).octaves().get(octave)[tile];
            log[i] = (float) Math.log(e + 0.1 * floor);
            weight[i] = e / (e + 2 * floor);
        }
        return new SharpnessCurve(tile, octave, log, weight);
    }

    private double span() {
        float least = Float.POSITIVE_INFINITY;
        float most = Float.NEGATIVE_INFINITY;
        for (float v : log) {
            least = Math.min(least, v);
            most = Math.max(most, v);
        }
        return most - least;
    }

    /** The height that fits best when sharpness falls by {@code fall} (logarithms, one per frame). */
    double height(float[] fall) {
        float sum = 0;
        float total = 1e-9f;
        for (int i = 0; i < log.length; i++) {
            sum += weight[i] * (log[i] - fall[i]);
            total += weight[i];
        }
        return sum / total;
    }

    /** Robust misfit at that height. */
    double misfit(float[] fall, double scale) {
        float height = (float) height(fall);
        float k = (float) (1 / (scale * scale));
        float sum = 0;
        for (int i = 0; i < log.length; i++) {
            float e = log[i] - height - fall[i];
            float r = k * e * e;
            sum += weight[i] * ((float) Math.sqrt(1 + r) - 1);
        }
        return sum;
    }

    /** Square for small errors, linear for large ones; without the false minima that a bounded cost brings. */
    static double cost(double error, double scale) {
        double r = error * error / (scale * scale);
        return Math.sqrt(1 + r) - 1;
    }
}
