package org.stook.imaging.codec;

import java.util.Optional;

/**
 * Where a written picture says it comes from. No wall clock is in it: the same input gives the same bytes.
 *
 * @param software name and version, ASCII
 * @param caption what people say of it
 * @param capture how the reference frame was taken
 * @param composite says that the picture is a composite, and of what; empty: a single frame
 */
public record Origin(String software, Caption caption, Capture capture, Optional<Composite> composite) {
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

    public Origin {
        if (!software.chars().allMatch(c -> c >= ' ' && c < 127)) {
            throw new IllegalArgumentException("the software's name must be plain ASCII, got " + software);
        }
    }

    /** Nothing is known but the program. */
    public static Origin of(String software) {
        return new Origin(software, Caption.none(), Capture.unknown(), Optional.empty());
    }

    public Origin of(Composite sources) {
        return new Origin(software, caption, capture, Optional.of(sources));
    }
}
