package org.stook.tamper;

import java.io.IOException;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.stook.postgres.LocalPostgres;

/** A real service on one database, there to migrate it and to seal. */
final class Service implements AutoCloseable {
    private static final long PATIENCE_MS = TimeUnit.MINUTES.toMillis(20);

    private final Process process;
    private final LocalPostgres postgres;
    private final String database;

    /** @param more of its settings */
    Service(Path jar, Path home, LocalPostgres postgres, String database, String... more) throws IOException {
        this.postgres = postgres;
        this.database = database;
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx512m",
                "-jar",
                jar.toString(),
                "--server.port=0",
                "--stook.audit.key=" + home.resolve("head-key.pem"),
                "--stook.audit.places=" + places(home, database)));
        command.addAll(List.of(more));
        ProcessBuilder builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        home.resolve("service-" + database + ".log").toFile()));
        builder.environment().put("SPRING_DATASOURCE_URL", postgres.url(database));
        builder.environment().put("SPRING_DATASOURCE_USERNAME", postgres.username());
        builder.environment().put("SPRING_DATASOURCE_PASSWORD", postgres.password());
        process = builder.start();
    }

    /** Where it lays its heads. */
    static Path places(Path home, String database) {
        return home.resolve("elsewhere-" + database);
    }

    /** Until the schema is there. */
    void awaitSchema() throws SQLException, InterruptedException {
        await(
                "select to_regclass('stook.audit_open') is not null and exists (select 1 from pg_roles where rolname = 'stook_rw')");
    }

    /** Until nothing is left to seal. */
    void awaitSealed() throws SQLException, InterruptedException {
        await("select not exists (select 1 from stook.audit_open) and exists (select 1 from stook.audit_seal)");
    }

    private void await(String sql) throws SQLException, InterruptedException {
        long end = System.nanoTime() + TimeUnit.MILLISECONDS.toNanos(PATIENCE_MS);
        while (true) {
            if (!process.isAlive()) throw new IllegalStateException("the service ended; see its log");
            try (Connection c = Main.connect(postgres, database);
                    var rows = c.createStatement().executeQuery(sql)) {
                rows.next();
                if (rows.getBoolean(1)) return;
            }
            if (System.nanoTime() > end) throw new IllegalStateException("waited too long for: " + sql);
            Thread.sleep(200);
        }
    }

    @Override
    public void close() throws InterruptedException {
        process.destroy();
        if (!process.waitFor(30, TimeUnit.SECONDS)) process.destroyForcibly().waitFor();
    }
}
