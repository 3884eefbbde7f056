package org.stook.studioday;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.stook.postgres.LocalPostgres;
import org.stook.postgres.PostgresOptions;
import org.stook.postgres.PostgresUnavailable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The drill. */
@Command(
        name = "studio-day",
        mixinStandardHelpOptions = true,
        description = "Shoots a scripted day into a service of its own and holds what came of it against the script.")
final class Main implements Callable<Integer> {
    private static final String RULES = """
            {"splitting": {"folders": "stack", "slates": "%s", "gapSeconds": 30},
             "roles": {"subject": "^(HC-[0-9]+)", "view": "/([a-z]+)$"},
             "patience": {"settleSeconds": 0.5, "quietSeconds": 6, "graceSeconds": 4}}""";

    @Option(names = "--service-jar", required = true, description = "the service's jar")
    private Path jar = Path.of("");

    @Option(names = "--home", required = true, description = "an empty folder for all that the drill needs")
    private Path home = Path.of("");

    @Option(names = "--seed", description = "of the script (${DEFAULT-VALUE})")
    private long seed = 1;

    @Option(names = "--stacks", description = "at each station (${DEFAULT-VALUE})")
    private int stacks = 60;

    @Option(names = "--pause", description = "milliseconds between two files of a station (${DEFAULT-VALUE})")
    private long pause = 30;

    @Option(names = "--kills", description = "how often the service is killed meanwhile (${DEFAULT-VALUE})")
    private int kills = 0;

    @Option(names = "--time-limit", description = "seconds to wait for rest after the last file (${DEFAULT-VALUE})")
    private int limit = 120;

    public static void main(String[] arguments) {
        System.exit(new CommandLine(new Main()).execute(arguments));
    }

    @Override
    public Integer call() throws Exception {
        Files.createDirectories(home);
        say("rendering");
        List<Roll.Shots> roll = Roll.of(seed, 12);
        Map<String, List<Piece>> stations = new LinkedHashMap<>();
        stations.put("north", new Script(seed, roll, "N", false).pieces(0, stacks));
        stations.put("south", new Script(seed + 1, roll, "S", true).pieces(stacks, stacks));
        try (LocalPostgres postgres = postgres();
                Service service = new Service(jar, home, postgres, arguments())) {
            service.start();
            say("shooting " + stations.values().stream().mapToInt(List::size).sum() + " stacks");
            Probe probe = new Probe(service);
            return shoot(stations, service, probe, postgres);
        }
    }

    private LocalPostgres postgres() throws PostgresUnavailable, SQLException {
        LocalPostgres postgres = LocalPostgres.start(PostgresOptions.throwaway(home.resolve("postgres")));
        postgres.ensureDatabase("stook");
        return postgres;
    }

    private List<String> arguments() throws IOException {
        List<String> arguments = new ArrayList<>(List.of("--stook.publish=" + home.resolve("published")));
        int index = 0;
        for (String station : List.of("north", "south")) {
            Path settings = home.resolve(station + ".json");
            Files.writeString(settings, RULES.formatted(index == 0 ? "first" : "last"));
            arguments.add("--stook.stations[" + index + "].name=" + station);
            arguments.add("--stook.stations[" + index + "].intake=" + home.resolve(station));
            arguments.add("--stook.stations[" + index + "].settings=" + settings);
            index++;
        }
        return arguments;
    }

    private int shoot(Map<String, List<Piece>> stations, Service service, Probe probe, LocalPostgres postgres)
            throws InterruptedException, ExecutionException, IOException, SQLException {
        ExecutorService cameras = Executors.newFixedThreadPool(stations.size() + 1);
        long start = System.nanoTime();
        Future<?> probing = cameras.submit(probe);
        List<Future<Integer>> deliveries = new ArrayList<>();
        stations.forEach(
                (name, pieces) -> deliveries.add(cameras.submit(new Delivery(home.resolve(name), pieces, pause))));
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < kills; i++) {
            Thread.sleep(random.nextInt(300, 4000));
            service.kill();
            service.start();
        }
        for (Future<Integer> delivery : deliveries) delivery.get();
        long shot = System.nanoTime();
        Findings findings = rest(postgres);
        probing.cancel(true);
        cameras.shutdownNow();
        Verdict verdict = new Verdict(stations, findings);
        return print(verdict, probe, (shot - start) / 1e9, (System.nanoTime() - start) / 1e9);
    }

    private Findings rest(LocalPostgres postgres) throws SQLException, InterruptedException {
        long until = System.nanoTime() + limit * 1_000_000_000L;
        Findings findings = Findings.read(postgres);
        while (System.nanoTime() < until && !findings.atRest()) {
            Thread.sleep(1000);
            findings = Findings.read(postgres);
        }
        return findings;
    }

    private int print(Verdict verdict, Probe probe, double shooting, double all) {
        List<Verdict.Line> lines = new ArrayList<>(verdict.lines());
        lines.add(probe.line(kills));
        System.out.printf("%n| seed %d, %d kills | found | bar | kept |%n| --- | --- | --- | --- |%n", seed, kills);
        for (Verdict.Line line : lines) {
            System.out.printf(
                    "| %s | %s | %s | %s |%n", line.what(), line.found(), line.bar(), line.kept() ? "yes" : "NO");
        }
        System.out.printf("| seconds shooting, until rest | %.0f, %.0f | | |%n%n", shooting, all);
        verdict.misses().stream().distinct().limit(60).forEach(miss -> System.out.println("miss: " + miss));
        return lines.stream().allMatch(Verdict.Line::kept) ? 0 : 1;
    }

    private static void say(String what) {
        System.out.println(what);
    }
}
