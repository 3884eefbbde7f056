package org.stook.imaging.tone;

import java.util.Arrays;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Samples;

/**
 * Mean linear light of tiles of a frame. Defocus spreads light but keeps its sum, so means of tiles that show the same
 * part of the subject differ by exposure and little else. The tiles are laid out in reference pixels for that reason:
 * without the frame's placement, breathing of 0.3 % a frame is taken for a change of light of up to 0.5 % a frame on a
 * bright subject before a dark ground (measured on rendered brackets).
 *
 * @param channels 1 or 3
 * @param means light 0 to 1, tile by tile row-major, channels interleaved
 * @param usable whether the tile is whole, and neither too dark nor clipped to say anything about exposure
 */
@SuppressWarnings("ArrayRecordComponent") // measurements, read by index, never compared
public record TileLight(int channels, double[] means, boolean[] usable) {

    /**
     * Measures a frame that was not registered.
     *
     * @param space of the samples' code values
     */
    public static TileLight measure(Samples samples, ColourSpace space) {
        return measure(samples, space, Placement.identity());
    }

    /**
     * Measures a frame where it lies.
     *
     * @param placement reference pixel to frame pixel; the reference frame has the size of this one
     */
    public static TileLight measure(Samples samples, ColourSpace space, Placement placement) {
        return measure(LightGrid.of(samples), space, placement);
    }

    /** As above, from pixels picked earlier. */
    public static TileLight measure(LightGrid grid, ColourSpace space, Placement placement) {
        return new TileMeasurement(grid, space, placement).measure();
    }

    /** Number of tiles. */
    public int tiles() {
        return usable.length;
    }

    double mean(int tile, int channel) {
        return means[tile * channels + channel];
    }

    @Override
    public String toString() {
        return "TileLight" + Arrays.toString(means);
    }
}
