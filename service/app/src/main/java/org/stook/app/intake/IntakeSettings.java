package org.stook.app.intake;

import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;
import org.springframework.boot.context.properties.bind.DefaultValue;
import org.stook.app.station.StationSettings;

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

    /**
     * @param intake folder that its frames arrive in
     * @param settings JSON file with the station's settings; taken as a new version at every start if it says anything new
     */
    public record StationPlan(
            String name, Path intake, @Nullable Path settings) {}

    /**
     * Where a station's settings say nothing.
     *
     * @param quiet how long nothing may change in a stack's folder before it is sealed
     * @param grace how long a file that stops early may still be arriving
     * @param settle how long a file must look the same; at least the time a network share caches attributes
     */
    public record Patience(
            @DefaultValue("10s") Duration quiet,
            @DefaultValue("60s") Duration grace,
            @DefaultValue("2s") Duration settle) {
        public StationSettings.Patience usual() {
            return new StationSettings.Patience(settle, quiet, grace);
        }
    }

    public IntakeSettings {
        stations = List.copyOf(stations);
    }
}
