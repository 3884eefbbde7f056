package org.stook.postgres;

import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * How to run the server.
 *
 * @param home folder for programs, data, password and log; made if absent
 * @param port TCP port on 127.0.0.1, or 0 for any free one
 * @param durable false trades safety at a power cut for speed: for tests only
 * @param parameters server parameters by name, as in {@code postgresql.conf}
 */
public record PostgresOptions(Path home, int port, boolean durable, Map<String, String> parameters) {

    /** Kept safely, with the connections that one machine's service and workers need. */
    public static PostgresOptions kept(Path home, int port) {
        return new PostgresOptions(home, port, true, Map.of("max_connections", "250"));
    }

    /** For tests: quick, on any free port. */
    public static PostgresOptions throwaway(Path home) {
        return new PostgresOptions(
                home,
                0,
                false,
                Map.of(
                        "fsync", "off",
                        "full_page_writes", "off",
                        "max_connections", "100",
                        "synchronous_commit", "off"));
    }

    public PostgresOptions {
        home = home.toAbsolutePath().normalize();
        parameters = Map.copyOf(parameters);
    }

    /** The same with one more parameter. */
    public PostgresOptions with(String parameter, String value) {
        Map<String, String> more = new LinkedHashMap<>(parameters);
        more.put(parameter, value);
        return new PostgresOptions(home, port, durable, more);
    }
}
