package org.stook.drills.scale;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
import org.stook.drills.stage.Program;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;

/**
 * True workers work off true runs of the same frames; counted is the stretch in which all of them have warmed up and none has
 * run out of work.
 *
 * @param runs of all workers, in order of their claims
 * @param counted those within the stretch
 * @param used meanwhile for each run
 */
record Stretch(List<RunCost> runs, List<RunCost> counted, Used used) {
    /**
     * @param workers how many, each with one imaging thread
     * @param cold runs of each worker that warm it up
     * @param count runs of each worker after that
     * @param width of the frames, pixels; they are two thirds as high
     */
    record Plan(int workers, int cold, int count, int width) {
        private static final long HEAP_MIB = 512;
        private static final long BYTES_A_PIXEL = 64;

        /** As delivered: with the optimising compiler. */
        List<String> javaOptions() {
            long pixels = (long) width * width * 2 / 3;
            return List.of("-XX:TieredStopAtLevel=4", "-Xmx" + (HEAP_MIB + (pixels * BYTES_A_PIXEL >> 20)) + "m");
        }
    }

    private static final long LOOK_MILLIS = 250;

    static Stretch of(Plan plan) throws Exception {
        Path folder = Path.of(System.getProperty("stook.drills.work")).resolve("stretch");
        try (Stage stage = Stage.open(folder, new Stage.Plan(plan.width(), plan.width() * 2 / 3, true))) {
            // One more of each: a run's cycle ends with its worker's next claim.
            stage.orderMinerals((plan.cold() + plan.count() + 1) * plan.workers());
            Program program = Program.unpack(Path.of(System.getProperty("stook.node.jar")), folder);
            for (int w = 0; w < plan.workers(); w++) {
                stage.hire(
                        program,
                        new Slot.Setup(
                                plan.javaOptions(), List.of("logging.level.org.stook.node.job=debug"), Map.of()));
            }
            return worked(stage, plan);
        }
    }

    private static Stretch worked(Stage stage, Plan plan) throws IOException, InterruptedException {
        while (warm(stage, plan) < plan.workers()) {
            TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
        }
        Used before = Used.of(stage);
        while (stage.open() > plan.workers()) {
            TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
        }
        Used used = Used.of(stage).each(before);
        while (stage.open() > 0) {
            TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
        }
        List<RunCost> runs = RunCost.of(stage);
        return new Stretch(runs, counted(runs, plan.cold()), used);
    }

    private static int warm(Stage stage, Plan plan) {
        return stage.jdbc()
                .sql("select count(*) from (select worker_id from stook.attempt group by 1 having count(*) > ?) w")
                .param(plan.cold())
                .query(Integer.class)
                .single();
    }

    private static List<RunCost> counted(List<RunCost> runs, int cold) {
        double from = runs.stream()
                .filter(r -> r.rank() == cold + 1)
                .mapToDouble(RunCost::claimed)
                .max()
                .orElseThrow();
        double to = byWorker(runs).stream()
                .mapToDouble(own -> own.get(own.size() - 1).claimed())
                .min()
                .orElseThrow();
        return runs.stream()
                .filter(r -> r.claimed() >= from && r.claimed() + r.cycle() <= to)
                .toList();
    }

    private static Collection<List<RunCost>> byWorker(List<RunCost> runs) {
        return runs.stream()
                .collect(Collectors.groupingBy(RunCost::worker, TreeMap::new, Collectors.toList()))
                .values();
    }

    /** Of all workers together. */
    double runsASecond() {
        return byWorker(counted).stream()
                .mapToDouble(own -> 1000
                        * own.size()
                        / own.stream().mapToDouble(RunCost::cycle).sum())
                .sum();
    }

    double mean(ToDoubleFunction<RunCost> part) {
        return counted.stream().mapToDouble(part).average().orElse(Double.NaN);
    }
}
