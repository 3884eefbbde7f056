package org.stook.imaging.codec;

import java.util.Optional;
import org.stook.imaging.frame.IccProfile;

/**
 * What a frame file says about itself.
 *
 * @param format as {@link FrameReader#format()}
 * @param width pixels, upright (after the orientation was applied)
 * @param height pixels, upright
 * @param channels 1 (grey) or 3 (red, green, blue); alpha is not counted
 * @param bitsPerSample 8 or 16
 * @param colour what the code values mean
 * @param pixelsPerInch resolution of the file, if it gives one in inches or centimetres
 * @param orientation Exif orientation 1 to 8 as found in the file; {@code read} has applied it already
 * @param capture how the frame was taken
 */
public record FrameHeader(
        String format,
        int width,
        int height,
        int channels,
        int bitsPerSample,
        Colour colour,
        Optional<Double> pixelsPerInch,
        int orientation,
        Capture capture) {

    /**
     * The colour space a file declares: by an embedded profile or, failing that, by Exif (ColorSpace 1 is sRGB; DCF's
     * interoperability index "R03" is Adobe RGB (1998), which many cameras write without a profile).
     */
    public record Colour(Optional<IccProfile> profile, Declared exif) {}

    /** What Exif says of the colour space. */
    public enum Declared {
        NOTHING,
        SRGB,
        ADOBE_RGB
    }
}
