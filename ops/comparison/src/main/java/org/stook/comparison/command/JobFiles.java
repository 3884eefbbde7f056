package org.stook.comparison.command;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** What a pipeline that runs in a process of its own works on. */
final class JobFiles {
    @Option(names = "--frames", required = true, description = "folder of frames, in sweep order by name")
    @SuppressWarnings("NullAway.Init") // required
    private Path frames;

    @Option(names = "--out", required = true, description = "composite, TIFF of 16 bits")
    @SuppressWarnings("NullAway.Init") // required
    private Path out;

    @Option(names = "--threads", defaultValue = "2", description = "(${DEFAULT-VALUE})")
    private int threads = 2;

    Path frames() {
        return frames;
    }

    Path out() {
        return out;
    }

    int threads() {
        return threads;
    }
}
