package org.stook.drills.scale;

import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.stook.drills.stage.Program;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** How soon a running attempt heeds an operator who calls it off. */
@Command(
        name = "cancel",
        mixinStandardHelpOptions = true,
        description =
                "Cancels runs of a true worker in each of their steps, some moment after it began, and times how long"
                        + " they go on.")
public final class CancelCommand implements Callable<Integer> {
    private static final double MOST_SECONDS = 3;
    private static final List<String> STEPS = List.of("survey", "register", "blend", "finish", "score");
    private static final int LOOK_MILLIS = 20;

    @Option(names = "--size", defaultValue = "6000", description = "width of the frames (${DEFAULT-VALUE})")
    private int width;

    @Option(names = "--times", defaultValue = "3", description = "in each step (${DEFAULT-VALUE})")
    private int times;

    @Option(names = "--seed", defaultValue = "1", description = "of the moments (${DEFAULT-VALUE})")
    private long seed;

    @Override
    public Integer call() throws Exception {
        Path folder = Path.of(System.getProperty("stook.drills.work")).resolve("cancel");
        Random random = new Random(seed);
        double longest = 0;
        try (Stage stage = Stage.open(folder, new Stage.Plan(width, width * 2 / 3, true))) {
            List<String> frames =
                    stage.material().lay("north/large", stage.material().mineral());
            Program program = Program.unpack(Path.of(System.getProperty("stook.node.jar")), folder);
            stage.hire(program, new Slot.Setup(new Stretch.Plan(1, 0, 0, width).javaOptions(), List.of(), Map.of()));
            for (int time = 0; time < times; time++) {
                for (String step : STEPS) {
                    RunId run = stage.order(
                            stage.material().stack("Called off " + step + " " + time, frames), Priorities.NORMAL);
                    double seconds = calledOff(stage, run, step, random);
                    System.out.printf("in %s: %s after %.2f s%n", step, state(stage, run), seconds);
                    longest = Math.max(longest, seconds);
                }
            }
        }
        System.out.printf("the longest: %.2f s, at most %.0f%n", longest, MOST_SECONDS);
        return longest <= MOST_SECONDS ? 0 : 2;
    }

    private static double calledOff(Stage stage, RunId run, String step, Random random) throws InterruptedException {
        while (!step.equals(value(stage, run, "stage")) && !state(stage, run).equals("PUBLISHED")) {
            TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
        }
        TimeUnit.MILLISECONDS.sleep(random.nextInt(500));
        long since = System.nanoTime();
        stage.runs().cancel(run, "operator", "drill");
        while (List.of("READY", "RUNNING", "PUBLISHING").contains(state(stage, run))) {
            TimeUnit.MILLISECONDS.sleep(LOOK_MILLIS);
        }
        return (System.nanoTime() - since) / 1e9;
    }

    private static String state(Stage stage, RunId run) {
        return value(stage, run, "state");
    }

    private static String value(Stage stage, RunId run, String column) {
        return stage.jdbc()
                .sql("select coalesce(" + column + ", '') from stook.run where id = ?")
                .param(run.value())
                .query(String.class)
                .single();
    }
}
