package org.stook.comparison.command;

import org.stook.comparison.stack.SceneStack;
import picocli.CommandLine.Option;

/** Which generated stack a timing is of. */
final class TimedStack {
    @Option(names = "--megapixels", defaultValue = "24", description = "size of a frame, 3:2 (${DEFAULT-VALUE})")
    private double megapixels = 24;

    @Option(names = "--frames", defaultValue = "10", description = "(${DEFAULT-VALUE})")
    private int frames = 10;

    @Option(names = "--seed", defaultValue = "7", description = "(${DEFAULT-VALUE})")
    private long seed = 7;

    double megapixels() {
        return megapixels;
    }

    int frames() {
        return frames;
    }

    SceneStack stack() {
        return SceneStack.forTiming(megapixels, frames, seed);
    }
}
