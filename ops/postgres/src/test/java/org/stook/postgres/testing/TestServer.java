package org.stook.postgres.testing;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.stook.postgres.LocalPostgres;
import org.stook.postgres.PostgresOptions;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.postgresql.PostgreSQLContainer;

/**
 * The one PostgreSQL of a test JVM: a container where an engine answers, else a local server whose data stay in the module's
 * {@code target} folder for the next run, and its programs in the project's. System property {@code test.db} = auto, docker or local decides;
 * what was asked for and cannot start fails the tests, it never skips them.
 */
record TestServer(String url, String username, String password) {
    private static final Path HOME = Path.of("target", "test-postgres");

    static TestServer get() {
        return Holder.SERVER;
    }

    private static TestServer start() {
        String wanted = System.getProperty("test.db", "auto");
        boolean container = switch (wanted) {
            case "docker" -> true;
            case "local" -> false;
            case "auto" -> engineInSight() && DockerClientFactory.instance().isDockerAvailable();
            default ->
                throw new IllegalArgumentException("test.db is '" + wanted + "', expected auto, docker or local");
        };
        long start = System.nanoTime();
        TestServer server = container ? container() : local();
        System.out.printf(
                "test.db=%s: %s after %d ms%n",
                wanted,
                container ? "a container" : "a local PostgreSQL in " + HOME.toAbsolutePath(),
                (System.nanoTime() - start) / 1_000_000);
        return server;
    }

    /** To ask for an engine takes every test JVM a second or two; where nothing hints at one it is not asked for. */
    private static boolean engineInSight() {
        Path home = Path.of(System.getProperty("user.home"));
        Path runtime = Path.of(System.getenv().getOrDefault("XDG_RUNTIME_DIR", "/run"));
        return System.getenv().keySet().stream().anyMatch(name -> name.matches("(DOCKER|TESTCONTAINERS)_.*"))
                || Stream.of(
                                Path.of("/var/run/docker.sock"),
                                runtime.resolve("docker.sock"),
                                runtime.resolve("podman"),
                                home.resolve(".docker"),
                                home.resolve(".testcontainers.properties"))
                        .anyMatch(Files::exists);
    }

    private static TestServer container() {
        PostgreSQLContainer container = new PostgreSQLContainer("postgres:18");
        container.start();
        return new TestServer(container.getJdbcUrl(), container.getUsername(), container.getPassword());
    }

    private static TestServer local() {
        try {
            LocalPostgres server = LocalPostgres.start(PostgresOptions.throwaway(HOME));
            Runtime.getRuntime().addShutdownHook(new Thread(() -> stop(server)));
            return new TestServer(server.url("postgres"), server.username(), server.password());
        } catch (IOException e) {
            throw new IllegalStateException("no PostgreSQL for the tests: " + e.getMessage(), e);
        }
    }

    private static void stop(LocalPostgres server) {
        try {
            server.close();
        } catch (IOException e) {
            System.err.println("the tests' PostgreSQL did not stop: " + e.getMessage());
        }
    }

    private static final class Holder {
        static final TestServer SERVER = start();
    }
}
