package org.stook.imaging.codec;

import java.nio.file.Path;

/** Sizes beyond which a picture is not believed; asked before anything is allocated. */
final class FileLimits {
    /** Twice the largest multi-shot sensors; three channels of it still fit one Java array. */
    static final long MOST_PIXELS = 1L << 29;

    private FileLimits() {}

    /**
     * @param mostPixels what a file of this length can hold at the format's best compression
     */
    static void check(Path file, long width, long height, long mostPixels) throws UnreadableFrame {
        if (width <= 0 || height <= 0) {
            throw UnreadableFrame.of(
                    UnreadableFrame.Reason.DAMAGED,
                    file,
                    "a picture of %d x %d pixels".formatted(width, height),
                    "at least 1 x 1");
        }
        // Both sides are below 2^32, so their product as doubles is exact enough to compare.
        if ((double) width * height > MOST_PIXELS) {
            throw UnreadableFrame.of(
                    UnreadableFrame.Reason.UNSUPPORTED,
                    file,
                    "a picture of %d x %d pixels".formatted(width, height),
                    "at most %d million pixels".formatted(MOST_PIXELS / 1_000_000));
        }
        if (width * height > mostPixels) {
            throw UnreadableFrame.of(
                    UnreadableFrame.Reason.DAMAGED,
                    file,
                    "a declared size of %d x %d pixels".formatted(width, height),
                    "a size that the data in the file can fill (at most %d pixels)".formatted(mostPixels));
        }
    }
}
