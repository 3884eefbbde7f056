package org.stook.drills.drill;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.springframework.dao.DataAccessException;
import org.stook.drills.check.History;
import org.stook.drills.check.Result;
import org.stook.drills.fault.Fault;
import org.stook.drills.stage.Program;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;

/** Runs a drill: sets the stage, orders, inflicts, waits for the end, and checks. */
public final class Conductor {
    private static final Stage.Plan SMALL = new Stage.Plan(240, 160, false);
    private static final int SETTLING_SECONDS = 60;
    private static final long UPKEEP_MILLIS = 60_000;

    private final Path work;
    private final Path nodeJar;
    private final long patienceSeconds;

    /** @param patienceSeconds after which a drill that does not end is given up */
    public Conductor(Path work, Path nodeJar, long patienceSeconds) {
        this.work = work;
        this.nodeJar = nodeJar;
        this.patienceSeconds = patienceSeconds;
    }

    public Result run(Drill drill, int runs, long seed) throws Exception {
        Random random = new Random(seed);
        long start = System.nanoTime();
        try (Stage stage = Stage.open(work.resolve(drill.name()), SMALL)) {
            stage.jdbc().sql("create schema drill").update();
            stage.jdbc()
                    .sql("create table drill.fault (kind text, run_id bigint, attempt int, worker_id text,"
                            + " at timestamptz default clock_timestamp())")
                    .update();
            drill.casting().order(stage, runs, random);
            Program program = Program.unpack(nodeJar, stage.folder());
            for (Slot.Setup setup : drill.workers()) {
                stage.hire(program, setup);
            }
            int inflicted = play(stage, drill, random, start);
            List<String> violations = new ArrayList<>(new History(stage.jdbc(), stage.wall()).violations());
            violations.addAll(drill.casting().verdict(stage));
            return Result.of(
                    drill.name(),
                    secondsSince(start),
                    inflicted + drill.casting().ownFaults(stage),
                    stage.jdbc(),
                    violations);
        }
    }

    private int play(Stage stage, Drill drill, Random random, long start) throws Exception {
        int inflicted = 0;
        long nextUpkeep = UPKEEP_MILLIS;
        while (open(stage) > 0 && secondsSince(start) < patienceSeconds) {
            if (inflicted < drill.pace().faults()) {
                Fault fault = drill.faults().get(random.nextInt(drill.faults().size()));
                inflicted += inflict(fault, stage, random);
            }
            TimeUnit.MILLISECONDS.sleep(drill.pace().pause(random));
            if (secondsSince(start) * 1000 > nextUpkeep) {
                nextUpkeep += UPKEEP_MILLIS;
                upkeep(stage);
            }
        }
        settle(stage);
        return inflicted;
    }

    /** A worker that died after its last word left a task behind, which the others notice like any other death. */
    private static void settle(Stage stage) throws InterruptedException {
        stage.slots().stream()
                .filter(s -> s.wire().isCut())
                .forEach(s -> s.wire().mend());
        for (int second = 0; second < SETTLING_SECONDS && stage.queued() > 0; second++) {
            TimeUnit.SECONDS.sleep(1);
        }
    }

    private static int inflict(Fault fault, Stage stage, Random random) throws Exception {
        try {
            return fault.inflict(stage, random);
        } catch (DataAccessException e) {
            return 0; // The drill's own connection was hit by an earlier fault.
        }
    }

    private static void upkeep(Stage stage) {
        try {
            stage.upkeep().age();
            stage.upkeep().repost();
            stage.upkeep().retire();
        } catch (DataAccessException e) {
            System.err.println("upkeep has to wait for the database: " + e.getMessage());
        }
    }

    private static int open(Stage stage) throws InterruptedException {
        while (true) {
            try {
                return stage.open();
            } catch (DataAccessException e) {
                TimeUnit.MILLISECONDS.sleep(200);
            }
        }
    }

    private static long secondsSince(long start) {
        return TimeUnit.NANOSECONDS.toSeconds(System.nanoTime() - start);
    }
}
