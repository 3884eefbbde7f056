package org.stook.launcher;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;

/**
 * What to start and where.
 *
 * @param home the folder of everything: {@code postgres}, {@code logs}, {@code intake}, {@code published},
 *     {@code scratch}
 * @param address that the service listens on
 * @param port that the service listens on; 0 for any free one
 * @param workers how many worker processes
 * @param serviceMemory greatest heap of the service, as {@code -Xmx} takes it
 * @param workerMemory greatest heap of each worker
 * @param stations intake folder by station, in order
 * @param settings of the service and the workers, as {@code key=value}
 * @param jars the programs
 */
public record StudioPlan(
        Path home,
        String address,
        int port,
        int workers,
        String serviceMemory,
        String workerMemory,
        Map<String, Path> stations,
        List<String> settings,
        Jars jars) {

    Path logs() {
        return home.resolve("logs");
    }

    Path published() {
        return home.resolve("published");
    }

    /** Where the service leaves the code that makes the first administrator; gone once that is done. */
    Path setupCode() {
        return home.resolve("setup-code");
    }

    StudioPlan withPort(int other) {
        return new StudioPlan(home, address, other, workers, serviceMemory, workerMemory, stations, settings, jars);
    }
}
