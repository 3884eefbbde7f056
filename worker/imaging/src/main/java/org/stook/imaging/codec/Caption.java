package org.stook.imaging.codec;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What people say of a picture; it goes into the file, so it decides bytes of it.
 *
 * @param title what it shows
 * @param creator who made it
 * @param rights the copyright notice
 * @param pixelSize what a pixel measures on the subject, micrometres, in the plane it was calibrated for; empty: not
 *     calibrated, and the picture is not for measurement
 */
public record Caption(
        Optional<String> title, Optional<String> creator, Optional<String> rights, OptionalDouble pixelSize) {
    private static final double SMALLEST = 0.026;
    private static final double LARGEST = 25_400;
    private static final double MICROMETRES_PER_INCH = 25_400;

    private static final int LONGEST_TEXT = 1000;

    public Caption {
        for (Optional<String> text : List.of(title, creator, rights)) {
            if (text.isPresent() && text.get().length() > LONGEST_TEXT) {
                throw new IllegalArgumentException("a caption's texts have at most %d characters, got %d"
                        .formatted(LONGEST_TEXT, text.get().length()));
            }
        }
        if (pixelSize.isPresent() && !(pixelSize.getAsDouble() >= SMALLEST && pixelSize.getAsDouble() <= LARGEST)) {
            throw new IllegalArgumentException("a pixel measures %s to %s micrometres, got %s"
                    .formatted(SMALLEST, LARGEST, pixelSize.getAsDouble()));
        }
    }

    /** Nothing is said. */
    public static Caption none() {
        return new Caption(Optional.empty(), Optional.empty(), Optional.empty(), OptionalDouble.empty());
    }

    public Caption titled(String words) {
        return new Caption(Optional.of(words), creator, rights, pixelSize);
    }

    /** @param otherwise where no pixel size is known */
    public double pixelsPerInch(double otherwise) {
        return pixelSize.isPresent() ? MICROMETRES_PER_INCH / pixelSize.getAsDouble() : otherwise;
    }
}
