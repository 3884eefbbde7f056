package org.stook.app.testing;

import java.nio.file.Path;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.stook.postgres.testing.TestDatabase;

/** The settings of a service with one station, north, on a database and a folder of its own. */
public final class OneStation {
    private OneStation() {}

    public static void register(DynamicPropertyRegistry registry, TestDatabase database, Path folder) {
        database.register(registry::add);
        registry.add("stook.stations[0].name", () -> "north");
        registry.add("stook.stations[0].intake", () -> folder.resolve("north"));
        registry.add("stook.publish", () -> folder.resolve("published"));
    }
}
