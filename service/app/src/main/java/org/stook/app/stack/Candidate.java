package org.stook.app.stack;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;

/**
 * An accepted file that may become a frame of a stack.
 *
 * @param fileId row of {@code intake_file}
 * @param path relative to the share's root
 * @param capturedAt by the camera's clock, null if the file does not say
 */
public record Candidate(
        long fileId,
        long shareId,
        String path,
        String sha256,
        int width,
        int height,
        @Nullable LocalDateTime capturedAt) {

    String name() {
        return path.substring(path.lastIndexOf('/') + 1);
    }
}
