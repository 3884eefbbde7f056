package org.stook.studioday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.stook.postgres.LocalPostgres;
import org.stook.postgres.PostgresOptions;
import org.stook.postgres.PostgresUnavailable;

/** A database and a service of the drill's own, in one folder. */
final class Trial implements AutoCloseable {
    private static final String DATABASE = "stook";
    private final Path home;
    private final LocalPostgres postgres;
    private final Service service;

    private Trial(Path home, LocalPostgres postgres, Service service) {
        this.home = home;
        this.postgres = postgres;
        this.service = service;
    }

    /**
     * @param stations settings in JSON by the stations' names; a station's folder has its name
     * @param durable whether the database waits for the disk
     */
    static Trial of(DrillOptions options, Map<String, String> stations, boolean durable)
            throws IOException, SQLException, PostgresUnavailable {
        Path home = Files.createDirectories(options.home());
        Path data = home.resolve("postgres");
        LocalPostgres postgres =
                LocalPostgres.start(durable ? PostgresOptions.kept(data, 0) : PostgresOptions.throwaway(data));
        postgres.ensureDatabase(DATABASE);
        return new Trial(home, postgres, new Service(options.jar(), home, postgres, arguments(home, stations)));
    }

    private static List<String> arguments(Path home, Map<String, String> stations) throws IOException {
        List<String> arguments = new ArrayList<>(List.of("--stook.publish=" + home.resolve("published")));
        int index = 0;
        for (Map.Entry<String, String> station : stations.entrySet()) {
            Path settings = home.resolve(station.getKey() + ".json");
            Files.writeString(settings, station.getValue());
            arguments.add("--stook.stations[" + index + "].name=" + station.getKey());
            arguments.add("--stook.stations[" + index + "].intake=" + home.resolve(station.getKey()));
            arguments.add("--stook.stations[" + index + "].settings=" + settings);
            index++;
        }
        return arguments;
    }

    Path folder(String station) {
        return home.resolve(station);
    }

    Service service() {
        return service;
    }

    /** The command line of a worker for this studio. */
    List<String> worker(Path jar, String threads) {
        return List.of(
                "java",
                "-Xmx768m",
                "-jar",
                jar.toString(),
                "--spring.datasource.url=" + postgres.url(DATABASE),
                "--spring.datasource.username=" + postgres.username(),
                "--spring.datasource.password=" + postgres.password(),
                "--stook.worker.threads=" + threads,
                "--logging.level.root=WARN");
    }

    Connection connect() throws SQLException {
        return DriverManager.getConnection(postgres.url(DATABASE), postgres.username(), postgres.password());
    }

    /** Waits until nothing is left to be done without a person, or the time is over. */
    Findings rest(int seconds) throws SQLException, InterruptedException {
        long until = System.nanoTime() + seconds * 1_000_000_000L;
        try (Connection connection = connect()) {
            Findings findings = Findings.read(connection);
            while (System.nanoTime() < until && !findings.atRest()) {
                Thread.sleep(1000);
                findings = Findings.read(connection);
            }
            return findings;
        }
    }

    @Override
    public void close() throws IOException, InterruptedException {
        service.close();
        postgres.close();
    }
}
