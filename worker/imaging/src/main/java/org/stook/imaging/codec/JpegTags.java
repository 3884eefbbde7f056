package org.stook.imaging.codec;

import java.util.Optional;
import org.stook.imaging.frame.IccProfile;

/**
 * How a JPEG is written and what it says about itself.
 *
 * @param quality 0 (smallest) to 1 (best)
 * @param profile embedded in APP2
 * @param pixelsPerInch X and Y resolution
 * @param origin where the picture comes from
 */
public record JpegTags(double quality, Optional<IccProfile> profile, double pixelsPerInch, Origin origin) {
    public JpegTags {
        if (!(quality >= 0 && quality <= 1)) {
            throw new IllegalArgumentException("JPEG quality must be 0 to 1, got " + quality);
        }
    }
}
