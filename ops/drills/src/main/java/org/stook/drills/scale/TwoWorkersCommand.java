package org.stook.drills.scale;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Whether a second worker is worth having. */
@Command(
        name = "two-workers",
        mixinStandardHelpOptions = true,
        description =
                "One worker and then two work off the same stacks, with one imaging thread each; prints both rates and"
                        + " their ratio.")
public final class TwoWorkersCommand implements Callable<Integer> {
    private static final double LEAST_RATIO = 1.8;

    @Option(names = "--runs", defaultValue = "10", description = "of each worker that count (${DEFAULT-VALUE})")
    private int runs;

    @Option(names = "--cold", defaultValue = "10", description = "that warm each worker up (${DEFAULT-VALUE})")
    private int cold;

    @Option(names = "--size", defaultValue = "1500", description = "width of the frames (${DEFAULT-VALUE})")
    private int width;

    @Override
    public Integer call() throws Exception {
        double one = rate(1);
        double two = rate(2);
        System.out.printf(
                "two workers against one: %.2f times the throughput, at least %.1f%n", two / one, LEAST_RATIO);
        return two / one >= LEAST_RATIO ? 0 : 2;
    }

    private double rate(int workers) throws Exception {
        Stretch work = Stretch.of(new Stretch.Plan(workers, cold, runs, width));
        System.out.printf(
                "%d worker(s), frames of %d x %d: %.3f runs/s over %d runs; a run takes %.0f ms, of which %.0f imaging;"
                        + " processor seconds a run: worker %.3f, database %.3f%n",
                workers,
                width,
                width * 2 / 3,
                work.runsASecond(),
                work.counted().size(),
                work.mean(RunCost::cycle),
                work.mean(r -> r.said().imaging()),
                work.used().workers(),
                work.used().database());
        return work.runsASecond();
    }
}
