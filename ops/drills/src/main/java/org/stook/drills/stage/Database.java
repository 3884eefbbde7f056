package org.stook.drills.stage;

import com.zaxxer.hikari.HikariDataSource;
import java.io.IOException;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.flywaydb.core.Flyway;
import org.stook.migrations.Schema;
import org.stook.migrations.WorkingLogin;
import org.stook.postgres.LocalPostgres;
import org.stook.postgres.PostgresOptions;

/** The studio's PostgreSQL, which can be stopped the hard way and comes back on the same port. */
public final class Database implements AutoCloseable {
    private static final String NAME = "studio";
    /** Of the workers: that of a studio, without the owner's rights. */
    private static final String LOGIN = "stook_work";

    private final Path home;
    private LocalPostgres server;
    private final HikariDataSource source = new HikariDataSource();

    private final boolean durable;

    private Database(Path home, boolean durable) throws IOException, SQLException {
        this.home = home;
        this.durable = durable;
        this.server = LocalPostgres.start(options(0));
        server.ensureDatabase(NAME);
        source.setJdbcUrl(url("127.0.0.1", server.port()));
        source.setUsername(server.username());
        source.setPassword(server.password());
        source.setMaximumPoolSize(8);
        source.setConnectionTimeout(5_000);
        source.addDataSourceProperty("socketTimeout", "30");
    }

    /**
     * A fresh database.
     *
     * @param durable whether commits outlive the machine's death, too, as in a studio; drills kill the server only
     * @param schema the newest migration it is to have had
     */
    public static Database open(Path home, boolean durable, int schema) throws IOException, SQLException {
        Database database = new Database(home, durable);
        Flyway.configure()
                .configuration(Schema.flyway(database.source).getConfiguration())
                .target(Integer.toString(schema))
                .load()
                .migrate();
        WorkingLogin.ensure(database.source, LOGIN, LOGIN);
        return database;
    }

    private PostgresOptions options(int port) {
        if (durable) {
            return PostgresOptions.kept(home, port);
        }
        return new PostgresOptions(
                home, port, false, Map.of("fsync", "off", "full_page_writes", "off", "max_connections", "250"));
    }

    public HikariDataSource source() {
        return source;
    }

    /** Processor time of the server and its sessions so far. */
    public Duration cpu() {
        return ProcessHandle.of(server.pid())
                .map(p -> Stream.concat(Stream.of(p), p.descendants())
                        .flatMap(h -> h.info().totalCpuDuration().stream())
                        .reduce(Duration.ZERO, Duration::plus))
                .orElse(Duration.ZERO);
    }

    public int port() {
        return server.port();
    }

    public String username() {
        return LOGIN;
    }

    public String password() {
        return LOGIN;
    }

    static String url(String host, int port) {
        return "jdbc:postgresql://" + host + ":" + port + "/" + NAME;
    }

    /** Ends the server without a checkpoint or a word to its clients, for so long. */
    public void outage(long seconds) throws IOException, InterruptedException {
        int port = server.port();
        Processes.signal("QUIT", server.pid());
        ProcessHandle.of(server.pid()).ifPresent(p -> p.onExit().join());
        server.close();
        TimeUnit.SECONDS.sleep(seconds);
        server = LocalPostgres.start(options(port));
    }

    @Override
    public void close() throws IOException {
        source.close();
        server.close();
    }
}
