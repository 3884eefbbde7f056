package org.stook.studioday;

import java.nio.file.Path;
import picocli.CommandLine.Option;

/** What every drill has to be told. */
final class DrillOptions {
    @Option(names = "--service-jar", required = true, description = "the service's jar")
    private Path jar = Path.of("");

    @Option(names = "--home", required = true, description = "an empty folder for all that the drill needs")
    private Path home = Path.of("");

    @Option(names = "--imaging-jar", description = "the imaging core's runnable jar")
    private Path imaging = Path.of("");

    @Option(names = "--worker-jar", description = "the worker's jar")
    private Path worker = Path.of("");

    @Option(names = "--verify-jar", description = "the jar that verifies bags")
    private Path verify = Path.of("");

    @Option(names = "--seed", description = "of all chances (${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(names = "--time-limit", description = "seconds to wait for rest after the last file (${DEFAULT-VALUE})")
    private int limit = 300;

    Path jar() {
        return jar;
    }

    Path imaging() {
        return imaging;
    }

    Path worker() {
        return worker;
    }

    Path verify() {
        return verify;
    }

    Path home() {
        return home;
    }

    long seed() {
        return seed;
    }

    int limit() {
        return limit;
    }
}
