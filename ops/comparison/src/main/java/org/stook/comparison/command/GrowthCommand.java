package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import org.stook.comparison.run.Outcome;
import org.stook.comparison.run.Usage;
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

    @Option(names = "--seed", defaultValue = "7", description = "(${DEFAULT-VALUE})")
    private long seed = 7;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Table table = Table.of(
                "growth, %d threads, Java options %s"
                        .formatted(options.threads(), System.getProperty("stook.java-options")),
                "megapixels",
                "frames",
                "wall, s",
                "wall, s a frame",
                "CPU, s a frame",
                "CPU, ns a pixel and frame",
                "peak, MiB",
                "collector, s");
        for (int count : frames) table.add(row(megapixels, count));
        for (double size : sizes) table.add(row(size, of));
        table.print(System.out);
        return 0;
    }

    private String[] row(double size, int count) throws IOException, InterruptedException {
        SceneStack stack = SceneStack.forTiming(size, count, seed);
        Path folder = stack.frames(options.stacks());
        Outcome outcome = options.pipelines(stack.name()).stook(folder);
        Usage usage = outcome.usage();
        return new String[] {
            Row.number(size, 0),
            Integer.toString(count),
            Row.number(usage.wallSeconds(), 1),
            Row.number(usage.wallSeconds() / count, 3),
            Row.number(usage.cpuSeconds() / count, 3),
            Row.number(1e9 * usage.cpuSeconds() / count / (size * 1e6), 1),
            Row.number(usage.peakMebibytes(), 0),
            Row.number(usage.collectorSeconds(), 2)
        };
    }
}
