package org.stook.imaging.crop;

import java.util.OptionalDouble;

/**
 * How the common area is chosen.
 *
 * @param ratio width divided by height, 0.05 to 20; empty keeps the ratio of the frames
 * @param margin whole pixels kept away from the edge of every frame on top of what resampling needs, 0 or more
 */
public record CropRule(OptionalDouble ratio, int margin) {
    public CropRule {
        if (ratio.isPresent() && !(ratio.getAsDouble() >= 0.05 && ratio.getAsDouble() <= 20)) {
            throw new IllegalArgumentException(
                    "crop ratio (width / height) must lie between 0.05 and 20, got " + ratio.getAsDouble());
        }
        if (margin < 0) throw new IllegalArgumentException("crop margin must be 0 pixels or more, got " + margin);
    }

    /** The frames' own aspect ratio, no extra margin. */
    public static CropRule keepRatio() {
        return new CropRule(OptionalDouble.empty(), 0);
    }
}
