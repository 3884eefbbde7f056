package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import org.stook.comparison.run.Pipelines;
import org.stook.comparison.run.Usage;
import org.stook.comparison.stack.MixedStack;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** How time and memory grow with the number of frames and with their size; each row is one whole process. */
@Command(
        name = "growth",
        description =
                "Time and memory of whole jobs by number of frames and by size. Long stacks take minutes to render once.")
public final class GrowthCommand implements Callable<Integer> {
    @Mixin
    private BenchOptions options = new BenchOptions();

    @Option(names = "--frames", split = ",", defaultValue = "5,10,20,60,120", description = "(${DEFAULT-VALUE})")
    private List<Integer> frames = List.of();

    @Option(
            names = "--megapixels",
            defaultValue = "6",
            description = "of the frames whose number grows, 3:2 (${DEFAULT-VALUE})")
    private double megapixels = 6;

    @Option(
            names = "--sizes",
            split = ",",
            defaultValue = "6,12,24,45,60",
            description = "megapixels of the frames whose size grows (${DEFAULT-VALUE})")
    private List<Double> sizes = List.of();

    @Option(
            names = "--of",
            defaultValue = "10",
            description = "number of the frames whose size grows (${DEFAULT-VALUE})")
    private int of = 10;

    @Option(
            names = "--mixed-from",
            description =
                    "so many frames are rendered, more are mixed of neighbours: quick, and good enough to be timed")
    private int mixedFrom = Integer.MAX_VALUE;

    @Option(names = "--rehearsed", description = "each process rehearses first, as a worker does")
    private boolean rehearsed;

    @Option(names = "--seed", defaultValue = "7", description = "(${DEFAULT-VALUE})")
    private long seed = 7;

    /** One whole process. */
    private record Job(double size, int count, Usage usage) {
        /** Million pixels of all frames. */
        double work() {
            return size * count;
        }
    }

    @Override
    public Integer call() throws IOException, InterruptedException {
        List<Job> byNumber = new ArrayList<>();
        for (int count : frames) byNumber.add(job(megapixels, count));
        print("by number of frames", byNumber);
        List<Job> bySize = new ArrayList<>();
        for (double size : sizes) bySize.add(job(size, of));
        print("by size of frames", bySize);
        return 0;
    }

    private Job job(double size, int count) throws IOException, InterruptedException {
        SceneStack stack = SceneStack.forTiming(size, count, seed);
        Path folder = count <= mixedFrom
                ? stack.frames(options.stacks())
                : new MixedStack(SceneStack.forTiming(size, mixedFrom, seed), count).frames(options.stacks());
        Pipelines pipelines = options.pipelines(stack.name());
        return new Job(
                size,
                count,
                rehearsed ? pipelines.worker(folder) : pipelines.stook(folder).usage());
    }

    /** The time of a process that starts, learns and ends is told apart: it is where the line through all jobs begins. */
    private void print(String what, List<Job> jobs) {
        double[] line = line(jobs);
        Table table = Table.of(
                "%s, %d threads, Java options %s; start of a process %.2f s, then %.1f ns a pixel and frame"
                        .formatted(
                                what,
                                options.threads(),
                                System.getProperty("stook.java-options"),
                                line[0],
                                1000 * line[1]),
                "megapixels",
                "frames",
                "wall, s",
                "wall less start, ns a pixel and frame",
                "parts of the line",
                "processor, ns a pixel and frame",
                "peak, MiB",
                "collector, s");
        for (Job job : jobs) {
            double rest = job.usage().wallSeconds() - line[0];
            table.add(
                    Row.number(job.size(), 0),
                    Integer.toString(job.count()),
                    Row.number(job.usage().wallSeconds(), 1),
                    Row.number(1000 * rest / job.work(), 1),
                    Row.number(rest / (line[1] * job.work()), 2),
                    Row.number(1000 * job.usage().cpuSeconds() / job.work(), 1),
                    Row.number(job.usage().peakMebibytes(), 0),
                    Row.number(job.usage().collectorSeconds(), 2));
        }
        table.print(System.out);
    }

    /**
     * Seconds at no work and seconds a million pixels: the line with least squares of relative errors, so that short jobs count
     * as much as long ones.
     */
    private static double[] line(List<Job> jobs) {
        double w = 0, wx = 0, wy = 0, wxx = 0, wxy = 0;
        for (Job job : jobs) {
            double y = job.usage().wallSeconds();
            double x = job.work();
            double weight = 1 / (y * y);
            w += weight;
            wx += weight * x;
            wy += weight * y;
            wxx += weight * x * x;
            wxy += weight * x * y;
        }
        double slope = (w * wxy - wx * wy) / (w * wxx - wx * wx);
        return new double[] {(wy - slope * wx) / w, slope};
    }
}
