package org.stook.app.intake;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;

/**
 * The studio as configured.
 *
 * @param stations whose folders are watched
 * @param publish root of the share that composites go to; without it they go to the station's own share
 * @param intake how patient the intake is
 */
@ConfigurationProperties("stook")
public record IntakeSettings(
        @DefaultValue List<StationPlan> stations,
        @Nullable Path publish,
        @DefaultValue Patience intake) {

    /** @param intake folder with one subfolder for each stack */
    public record StationPlan(String name, Path intake) {}

    /**
     * @param quiet how long nothing may change in a stack's folder before it is sealed
     * @param grace how long a file that stops early may still be arriving
     * @param settle how long a file must look the same; at least the time a network share caches attributes
     */
    public record Patience(
            @DefaultValue("10s") Duration quiet,
            @DefaultValue("60s") Duration grace,
            @DefaultValue("2s") Duration settle) {}

    public IntakeSettings {
        stations = List.copyOf(stations);
    }
}
