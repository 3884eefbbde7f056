package org.stook.drills.scale;

import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What queue, batch job and publishing cost on top of the imaging, on a true worker. */
@Command(
        name = "overhead",
        mixinStandardHelpOptions = true,
        description = "Works off true runs with one worker; prints what a run costs beyond imaging and hashing, and how"
                + " soon after its claim its first frame is read.")
public final class OverheadCommand implements Callable<Integer> {
    private static final double MOST_BEYOND_MS = 150;
    private static final double MOST_START_MS = 300;

    @Option(names = "--runs", defaultValue = "15", description = "that count (${DEFAULT-VALUE})")
    private int runs;

    @Option(names = "--cold", defaultValue = "10", description = "that warm the worker up (${DEFAULT-VALUE})")
    private int cold;

    @Option(names = "--size", defaultValue = "480", description = "width of the frames (${DEFAULT-VALUE})")
    private int width;

    @Override
    public Integer call() throws Exception {
        Stretch work = Stretch.of(new Stretch.Plan(1, cold, runs, width));
        System.out.printf(
                "%d runs after %d to warm up, 5 frames of %d x %d pixels, one worker; means in milliseconds%n",
                work.counted().size(), cold, width, width * 2 / 3);
        line("a run, from claim to claim", work.mean(RunCost::cycle));
        line("imaging, from survey to score", work.mean(r -> r.said().imaging()));
        line("comparing frames with intake", work.mean(r -> r.said().hashing()));
        line("publishing: copy, force, read back, hash, rename", work.mean(RunCost::publishing));
        line("reporting where it is", work.mean(r -> r.said().reporting()));
        double beyond = work.mean(RunCost::beyond);
        line(
                "the rest: queue, claim, job and its steps, fence",
                beyond
                        - work.mean(RunCost::publishing)
                        - work.mean(r -> r.said().reporting()));
        line("in all beyond imaging and comparing, at most " + MOST_BEYOND_MS, beyond);
        boolean soon = starts(work);
        System.out.printf(
                "the database's log was forced to the disk %.1f times a run%n",
                work.used().syncs());
        return beyond <= MOST_BEYOND_MS && soon ? 0 : 2;
    }

    private static boolean starts(Stretch work) {
        List<Double> starts =
                work.counted().stream().map(r -> r.said().start()).sorted().toList();
        double latest = starts.get(starts.size() - 1);
        line("from claim to first frame, median", starts.get(starts.size() / 2));
        line("the latest, at most " + MOST_START_MS, latest);
        line("in the first run of the process", work.runs().get(0).said().start());
        return latest <= MOST_START_MS;
    }

    private static void line(String what, double millis) {
        System.out.printf("%8.1f  %s%n", millis, what);
    }
}
