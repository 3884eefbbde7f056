package org.stook.imaging.codec;

import java.util.Optional;
import org.stook.imaging.frame.IccProfile;

/**
 * What a written TIFF says about itself besides its pixels.
 *
 * @param bitsPerSample 8 or 16
 * @param profile embedded as tag 34675
 * @param pixelsPerInch X and Y resolution; 300 where nothing better is known
 * @param origin where the picture comes from
 */
public record TiffTags(int bitsPerSample, Optional<IccProfile> profile, double pixelsPerInch, Origin origin) {
    private static final double USUAL_RESOLUTION = 300;

    public TiffTags {
        if (bitsPerSample != 8 && bitsPerSample != 16) {
            throw new IllegalArgumentException("a TIFF is written in 8 or 16 bit, got " + bitsPerSample);
        }
        if (!(pixelsPerInch >= 1 && pixelsPerInch <= 1_000_000)) {
            throw new IllegalArgumentException("resolution must be 1 to 1000000 pixels an inch, got " + pixelsPerInch);
        }
    }

    /** 16 bit, the given profile, nothing else known. */
    public static TiffTags sixteenBit(Optional<IccProfile> profile, String software) {
        return new TiffTags(16, profile, USUAL_RESOLUTION, Origin.of(software));
    }

    public TiffTags at(double resolution) {
        return new TiffTags(bitsPerSample, profile, resolution, origin);
    }

    public TiffTags from(Origin whence) {
        return new TiffTags(bitsPerSample, profile, pixelsPerInch, whence);
    }
}
