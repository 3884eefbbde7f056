package org.stook.imaging.survey;

import java.util.List;
import org.stook.imaging.frame.Plane;

/**
 * What one frame tells by itself. Small (some ten thousand numbers) whatever the frame's size.
 *
 * @param tilesX tiles along a row
 * @param tilesY tiles along a column
 * @param octaves for each octave, finest first, the band-pass energy of every tile (row-major) divided by the square of the
 *     tile's mean level; what noise adds is taken off, never below zero
 * @param floors for each octave the energy that is too small to tell from noise
 * @param exposure levels of the frame
 * @param thumbnail heavily reduced luminance, for comparison of whole frames
 */
public record FrameSurvey(
        int tilesX, int tilesY, List<float[]> octaves, float[] floors, Exposure exposure, Plane thumbnail) {
    public FrameSurvey {
        octaves = List.copyOf(octaves);
    }

    /**
     * Levels of a frame.
     *
     * @param mean luminance, 0 to 1, encoded
     * @param black share of pixels at or below 0.004 (one 8-bit step)
     * @param white share of pixels at or above 0.996
     * @param noise standard deviation of luminance in the flattest places, at the surveyed size
     */
    public record Exposure(double mean, double black, double white, double noise) {}

    public int tiles() {
        return tilesX * tilesY;
    }

    /** Sharpness of a tile over all octaves, the finer ones counting more; comparable between frames of one sweep. */
    public double sharpness(int tile) {
        double sum = 0;
        for (int k = 0; k < octaves.size(); k++) sum += octaves.get(k)[tile] / (1 << k);
        return sum;
    }

    boolean sameShapeAs(FrameSurvey other) {
        return tilesX == other.tilesX && tilesY == other.tilesY && octaves.size() == other.octaves.size();
    }
}
