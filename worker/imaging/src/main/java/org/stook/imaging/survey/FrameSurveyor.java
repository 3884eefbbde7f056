package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Reduction;

/**
 * Surveys one frame from its reduced luminance.
 *
 * <p>Sharpness is the energy of octave bands, each band the difference of a plane and its blurred self (Burt and Adelson
 * 1983, The Laplacian pyramid as a compact image code). Of the measures compared by Pertuz, Puig and Garcia 2013 (Analysis
 * of focus measure operators for shape-from-focus) the Laplacian family is the most exact and the one most hurt by noise:
 * hence several octaves, and noise taken off.
 */
public final class FrameSurveyor {
    private static final int TILES_ALONG_LONG_SIDE = 28;
    private static final int OCTAVES = 4;
    private static final int THUMBNAIL_LONG_SIDE = 48;
    private static final float BLACK = 0.004f;
    private static final float WHITE = 0.996f;

    private FrameSurveyor() {}

    /**
     * Surveys a frame.
     *
     * @param luma luminance, encoded 0 to 1, as read from a {@link org.stook.imaging.frame.LumaSource}; a long side of
     *     1000 to 3000 is plenty
     * @param reduction by how much {@code luma} is reduced; frames of one sweep must agree in it
     */
    public static FrameSurvey survey(Plane luma, int reduction) {
        if (reduction < 1) throw new IllegalArgumentException("reduction must be at least 1, got " + reduction);
        double tile = Math.max(luma.width(), luma.height()) / (double) TILES_ALONG_LONG_SIDE;
        Tiles tiles = new Tiles(Math.max(1, (int) Math.round(luma.width() / tile)), Math.max(1, (int)
                Math.round(luma.height() / tile)));
        float[] means = tiles.means(luma);
        double noise = Noise.of(luma, tiles);
        List<float[]> octaves = new ArrayList<>();
        float[] floors = new float[OCTAVES];
        Plane plane = luma;
        double mean = mean(means);
        for (int k = 0; k < OCTAVES; k++) {
            if (k > 0) plane = Reduction.half(plane);
            double added = noise * noise * Noise.bandGain(k);
            octaves.add(normalised(tiles.meanSquares(OctaveBand.of(plane)), means, added));
            floors[k] = (float) (added / square(mean) + 1e-9);
        }
        return new FrameSurvey(
                tiles.across(), tiles.down(), octaves, floors, exposure(luma, mean, noise), thumbnail(plane));
    }

    private static float[] normalised(float[] energy, float[] means, double added) {
        float[] result = new float[energy.length];
        for (int t = 0; t < energy.length; t++) {
            result[t] = (float) (Math.max(0, energy[t] - added) / square(means[t]));
        }
        return result;
    }

    /** Square of a level, held off zero so that black tiles do not become infinitely sharp. */
    private static double square(double level) {
        double held = Math.max(0, level) + 0.02;
        return held * held;
    }

    private static double mean(float[] values) {
        double sum = 0;
        for (float v : values) sum += v;
        return sum / values.length;
    }

    private static FrameSurvey.Exposure exposure(Plane luma, double mean, double noise) {
        int n = luma.width() * luma.height();
        int black = 0;
        int white = 0;
        for (int i = 0; i < n; i++) {
            float v = luma.samples()[i];
            if (v <= BLACK) black++;
            if (v >= WHITE) white++;
        }
        return new FrameSurvey.Exposure(mean, (double) black / n, (double) white / n, noise);
    }

    private static Plane thumbnail(Plane plane) {
        Plane small = plane;
        while (Math.max(small.width(), small.height()) > THUMBNAIL_LONG_SIDE) small = Reduction.half(small);
        // A copy: the input itself must not be kept alive, nor change under us.
        return new Plane(small.width(), small.height(), Arrays.copyOf(small.samples(), small.width() * small.height()));
    }
}
