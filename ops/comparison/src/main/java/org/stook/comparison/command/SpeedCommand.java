package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.stook.comparison.run.Decoding;
import org.stook.comparison.run.Pipelines;
import org.stook.comparison.run.Runs;
import org.stook.comparison.run.WarmJobs;
import org.stook.comparison.stack.FrameFiles;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Whole processes, turn by turn on the same frames, so that whatever else the machine does slows both. */
@Command(name = "speed", description = "Time, cores and memory of whole jobs, turn by turn.")
public final class SpeedCommand implements Callable<Integer> {
    private static final double GIBIBYTE = 1024;

    @Mixin
    private BenchOptions options = new BenchOptions();

    @Mixin
    private TimedStack timed = new TimedStack();

    @Option(names = "--turns", defaultValue = "3", description = "figures are medians of so many (${DEFAULT-VALUE})")
    private int turns = 3;

    @Option(
            names = "--warm-jobs",
            defaultValue = "8",
            description = "jobs that a process does of which the last three are timed, 3 or more (${DEFAULT-VALUE})")
    private int warmJobs = 8;

    @Override
    public Integer call() throws IOException, InterruptedException {
        SceneStack stack = timed.stack();
        Path folder = stack.frames(options.stacks());
        Pipelines pipelines = options.pipelines(stack.name());
        Runs stook = new Runs();
        Runs theirs = new Runs();
        for (int turn = 0; turn < turns; turn++) {
            stook.add(pipelines.stook(folder));
            theirs.add(pipelines.reference(folder));
        }
        Table table = Table.ofChecks("%s: %d frames, %d threads, medians of %d turns"
                .formatted(stack.name(), timed.frames(), options.threads(), turns));
        double decoding = Decoding.seconds(FrameFiles.in(folder), options.threads(), turns);
        table.add(Row.of("decoding all frames on all threads, s", 2).stook(decoding));
        compare(table, "whole job, fresh process", stook.wall(), theirs.wall(), decoding);
        whole(table, stook, theirs);
        warm(table, pipelines, folder, decoding);
        for (String stage : stook.stages()) {
            table.add(Row.of("stage " + stage + ", s a frame", 3).stook(stook.stage(stage) / timed.frames()));
        }
        for (String stage : theirs.stages()) {
            table.add(
                    Row.of("their stage " + stage + ", s a frame", 3).reference(theirs.stage(stage) / timed.frames()));
        }
        table.print(System.out);
        return 0;
    }

    private void whole(Table table, Runs stook, Runs theirs) {
        table.add(Row.of("whole job, s a frame", 3)
                .stook(stook.wall() / timed.frames())
                .reference(theirs.wall() / timed.frames()));
        table.add(Row.of("cores kept busy", 2).stook(stook.cores()).reference(theirs.cores()));
        table.add(Row.of("peak resident memory, GiB", 2)
                .stook(stook.peak() / GIBIBYTE)
                .reference(theirs.peak() / GIBIBYTE)
                .atMost(timed.megapixels() > 30 ? 2.8 : 1.2));
        table.add(Row.of("garbage collector pauses, s", 3).stook(stook.collector()));
    }

    /** A worker stays up; what its runtime has to learn in the first job it knows in the next. */
    private void warm(Table table, Pipelines pipelines, Path folder, double decoding)
            throws IOException, InterruptedException {
        WarmJobs.Times stook = pipelines.again(WarmJobs.Pipeline.STOOK, folder, warmJobs);
        WarmJobs.Times theirs = pipelines.again(WarmJobs.Pipeline.REFERENCE, folder, warmJobs);
        compare(table, "first job of a process that rehearsed", stook.first(), theirs.first(), decoding);
        String last = "jobs %d to %d of one process, median".formatted(warmJobs - WarmJobs.TIMED + 1, warmJobs);
        compare(table, last, stook.last(), theirs.last(), decoding);
    }

    private static void compare(Table table, String what, double stook, double theirs, double decoding) {
        table.add(Row.of(what + ", s", 2).stook(stook).reference(theirs));
        table.add(Row.of(what + ", parts of the reference's time", 3)
                .stook(stook / theirs)
                .reference(1)
                .atMost(0.35));
        table.add(Row.of(what + ", multiple of decoding", 2)
                .stook(stook / decoding)
                .reference(theirs / decoding));
    }
}
