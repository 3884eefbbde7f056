package org.stook.imaging.composite;

import java.nio.file.Path;
import java.util.List;

/**
 * What to compose.
 *
 * @param frames the files of one stack in any order; some may turn out to be no frames at all
 * @param recipe the settings
 * @param threads how many threads may be used, at least 1; the result does not depend on it
 */
public record ComposeOrder(List<Path> frames, Recipe recipe, int threads) {
    public ComposeOrder {
        frames = List.copyOf(frames);
        if (threads < 1) throw new IllegalArgumentException("threads must be 1 or more, got " + threads);
    }
}
