package org.stook.imaging.codec;

import java.time.LocalDateTime;
import java.util.Optional;
import org.stook.imaging.frame.IccProfile;

/**
 * What a written TIFF says about itself besides its pixels.
 *
 * @param bitsPerSample 8 or 16
 * @param profile embedded as tag 34675
 * @param pixelsPerInch X and Y resolution; 300 where nothing better is known
 * @param software tag 305, ASCII
 * @param written tag 306; leave it empty where the same input must give the same bytes
 * @param composite says that the picture is a composite, and of what
 */
public record TiffTags(
        int bitsPerSample,
        Optional<IccProfile> profile,
        double pixelsPerInch,
        String software,
        Optional<LocalDateTime> written,
        Optional<Composite> composite) {

    private static final double USUAL_RESOLUTION = 300;

    /**
     * Exif 2.32 and later: CompositeImage (0xA460) = 2, "general composite image", and
     * SourceImageNumberOfCompositeImage (0xA461).
     *
     * @param frames frames that were shot for it
     * @param used frames that went into it
     */
    public record Composite(int frames, int used) {
        public Composite {
            if (used < 2 || frames < used || frames > 0xFFFF) {
                throw new IllegalArgumentException(
                        "a composite uses 2 or more of at most 65535 frames, got %d of %d".formatted(used, frames));
            }
        }
    }

    public TiffTags {
        if (bitsPerSample != 8 && bitsPerSample != 16) {
            throw new IllegalArgumentException("a TIFF is written in 8 or 16 bit, got " + bitsPerSample);
        }
        if (!(pixelsPerInch >= 1 && pixelsPerInch <= 1_000_000)) {
            throw new IllegalArgumentException("resolution must be 1 to 1000000 pixels an inch, got " + pixelsPerInch);
        }
        if (!software.chars().allMatch(c -> c >= ' ' && c < 127)) {
            throw new IllegalArgumentException("the software's name must be plain ASCII, got " + software);
        }
    }

    /** 16 bit, the given profile, nothing else known. */
    public static TiffTags sixteenBit(Optional<IccProfile> profile, String software) {
        return new TiffTags(16, profile, USUAL_RESOLUTION, software, Optional.empty(), Optional.empty());
    }

    public TiffTags at(double resolution) {
        return new TiffTags(bitsPerSample, profile, resolution, software, written, composite);
    }

    public TiffTags of(Composite sources) {
        return new TiffTags(bitsPerSample, profile, pixelsPerInch, software, written, Optional.of(sources));
    }
}
