package org.stook.studioday;

import java.io.IOException;
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
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A whole day. */
@Command(name = "day", description = "Shoots a scripted day and holds what came of it against the script.")
final class DayCommand implements Callable<Integer> {
    private static final String RULES = """
            {"splitting": {"folders": "stack", "slates": "%s", "gapSeconds": 30},
             "roles": {"subject": "^(HC-[0-9]+)", "view": "/([a-z]+)$"},
             "patience": {"settleSeconds": 0.5, "quietSeconds": 6, "graceSeconds": 4}}""";

    @Mixin
    private DrillOptions options = new DrillOptions();

    @Option(names = "--stacks", description = "at each station (${DEFAULT-VALUE})")
    private int stacks = 60;

    @Option(names = "--pause", description = "milliseconds between two files of a station (${DEFAULT-VALUE})")
    private long pause = 30;

    @Option(names = "--kills", description = "how often the service is killed meanwhile (${DEFAULT-VALUE})")
    private int kills = 0;

    @Option(
            names = "--publish",
            description =
                    "so many stacks are then published, made again and one pulled and verified (${DEFAULT-VALUE})")
    private int publish = 0;

    @Override
    public Integer call() throws Exception {
        System.out.println("rendering");
        List<Roll.Shots> roll = Roll.of(options.seed(), 12);
        Map<String, List<Piece>> stations = new LinkedHashMap<>();
        stations.put("north", new Script(options.seed(), roll, "N", false).pieces(0, stacks));
        stations.put("south", new Script(options.seed() + 1, roll, "S", true).pieces(stacks, stacks));
        Map<String, String> rules = new LinkedHashMap<>();
        rules.put("north", RULES.formatted("first"));
        rules.put("south", RULES.formatted("last"));
        try (Trial trial = Trial.of(options, rules, false)) {
            trial.service().start();
            System.out.println("shooting " + 2 * stacks + " stacks");
            return shoot(stations, trial);
        }
    }

    private int shoot(Map<String, List<Piece>> stations, Trial trial)
            throws InterruptedException, ExecutionException, IOException, SQLException {
        ExecutorService cameras = Executors.newFixedThreadPool(stations.size() + 1);
        Probe probe = new Probe(trial.service());
        long start = System.nanoTime();
        Future<?> probing = cameras.submit(probe);
        List<Future<Integer>> deliveries = new ArrayList<>();
        stations.forEach(
                (name, pieces) -> deliveries.add(cameras.submit(new Delivery(trial.folder(name), pieces, pause))));
        SplittableRandom random = new SplittableRandom(options.seed());
        for (int i = 0; i < kills; i++) {
            Thread.sleep(random.nextInt(300, 4000));
            trial.service().kill();
            trial.service().start();
        }
        for (Future<Integer> delivery : deliveries) delivery.get();
        long shot = System.nanoTime();
        Findings findings = trial.rest(options.limit());
        probing.cancel(true);
        cameras.shutdownNow();
        Verdict verdict = new Verdict(stations, findings);
        List<Line> lines = new ArrayList<>(verdict.lines());
        lines.add(probe.line(kills == 0));
        String seconds = "%.0f, %.0f".formatted((shot - start) / 1e9, (System.nanoTime() - start) / 1e9);
        lines.add(new Line("seconds shooting, until rest", seconds, "", true));
        if (publish > 0) lines.addAll(new Afterwards(trial, options, publish).lines());
        return Line.print("seed %d, %d kills".formatted(options.seed(), kills), lines, verdict.misses());
    }
}
