package org.stook.drills.drill;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.stook.drills.check.History;
import org.stook.drills.stage.Program;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;
import org.stook.migrations.Schema;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** An upgrade under load: expand the schema, let the old workers pause, roll to new ones. */
@Command(
        name = "upgrade",
        mixinStandardHelpOptions = true,
        description =
                "Migrates the database under the hands of an older release's workers, which must finish what they have and"
                        + " pause; then starts this release's workers and ends the old ones.")
public final class UpgradeCommand implements Callable<Integer> {
    private static final Slot.Setup SETUP = new Slot.Setup(List.of("-Xmx256m"), List.of(), Map.of());

    @Option(names = "--old", paramLabel = "JAR", required = true, description = "the older release's worker")
    private Path old = Path.of("old.jar");

    @Option(names = "--old-schema", required = true, description = "the newest migration that it knows")
    private int oldSchema;

    @Option(names = "--runs", defaultValue = "30", description = "${DEFAULT-VALUE}")
    private int runs;

    @Override
    public Integer call() throws Exception {
        Path folder = Path.of(System.getProperty("stook.drills.work")).resolve("upgrade");
        try (Stage stage = Stage.open(folder, new Stage.Plan(240, 160, false, oldSchema))) {
            stage.orderMinerals(runs);
            List<Slot> olds = hire(stage, Program.unpack(old, folder.resolve("old")));
            await(stage, "select count(*) >= 6 from stook.publication", "the old workers publish");
            int migrations = Schema.migrate(stage.database().source());
            System.out.printf("%d migrations under load%n", migrations);
            await(
                    stage,
                    "select count(*) = 2 from stook.worker where state = 'PAUSED' and pause_reason like 'the database has schema%'",
                    "the old workers pause");
            await(stage, "select count(*) = 0 from stook.attempt where ended_at is null", "what they had is finished");
            int attempts = attempts(stage);
            TimeUnit.SECONDS.sleep(10);
            System.out.printf("claims while paused: %d%n", attempts(stage) - attempts);
            hire(stage, Program.unpack(Path.of(System.getProperty("stook.node.jar")), folder.resolve("new")));
            for (Slot slot : olds) {
                slot.retire();
            }
            await(
                    stage,
                    "select count(*) = 0 from stook.run where state <> 'PUBLISHED'",
                    "the new workers publish the rest");
            List<String> violations = new ArrayList<>(new History(stage.jdbc(), stage.wall()).violations());
            violations.addAll(Castings.others(stage, "failures > 0 or deaths > 0"));
            violations.forEach(System.out::println);
            System.out.println(violations.isEmpty() ? "sound" : "NOT sound");
            return violations.isEmpty() ? 0 : 2;
        }
    }

    private static List<Slot> hire(Stage stage, Program program) throws Exception {
        return List.of(stage.hire(program, SETUP), stage.hire(program, SETUP));
    }

    private static int attempts(Stage stage) {
        return stage.jdbc()
                .sql("select count(*) from stook.attempt")
                .query(Integer.class)
                .single();
    }

    private static void await(Stage stage, String sql, String what) throws InterruptedException {
        long start = System.nanoTime();
        while (!stage.jdbc().sql(sql).query(Boolean.class).single()) {
            TimeUnit.MILLISECONDS.sleep(200);
            if (System.nanoTime() - start > TimeUnit.MINUTES.toNanos(5)) {
                throw new IllegalStateException("five minutes, and not yet: " + what);
            }
        }
        System.out.printf("%s: after %.1f s%n", what, (System.nanoTime() - start) / 1e9);
    }
}
