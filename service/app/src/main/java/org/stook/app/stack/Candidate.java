package org.stook.app.stack;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * An accepted file that may become a frame of a stack.
 *
 * @param fileId row of {@code intake_file}
 */
public record Candidate(long fileId, Place place, String sha256, Facts facts) {
    /** @param path relative to the share's root */
    public record Place(long shareId, String path) {}

    /**
     * @param capturedAt by the camera's clock, null if the file does not say
     * @param kept taken back by a person
     */
    public record Facts(int width, int height, @Nullable LocalDateTime capturedAt, boolean kept) {}

    String name() {
        return place.path().substring(place.path().lastIndexOf('/') + 1);
    }
}
