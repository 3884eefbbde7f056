package org.stook.app.testing;

import java.nio.file.Path;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.stook.postgres.testing.TestDatabase;

/** The settings of a service with one station, north, on a database and a folder of its own. */
public final class OneStation {
    private OneStation() {}

    public static void register(DynamicPropertyRegistry registry, TestDatabase database, Path folder) {
        logins(registry, database);
        registry.add("stook.stations[0].name", () -> "north");
        registry.add("stook.stations[0].intake", () -> folder.resolve("north"));
        registry.add("stook.publish", () -> folder.resolve("published"));
    }

    /** As in earnest: the owner of the tables migrates, and the service works under another login, one for all tests. */
    public static void logins(DynamicPropertyRegistry registry, TestDatabase database) {
        registry.add("spring.datasource.url", database::url);
        registry.add("spring.datasource.username", () -> "stook_work");
        registry.add("spring.datasource.password", () -> "it's work");
        registry.add("stook.owner.username", database::username);
        registry.add("stook.owner.password", database::password);
    }
}
