package org.stook.comparison.command;

import java.util.Collection;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.results.RunResult;
import org.openjdk.jmh.runner.Runner;
import org.openjdk.jmh.runner.RunnerException;
import org.openjdk.jmh.runner.options.OptionsBuilder;
import org.openjdk.jmh.runner.options.TimeValue;
import org.openjdk.jmh.runner.options.VerboseMode;
import org.stook.comparison.kernel.Kernels;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Time of each kernel a pixel, and how near that is to what the memory alone would take. */
@Command(name = "kernels", description = "Each pixel kernel by itself under JMH, against the machine's memory.")
public final class KernelsCommand implements Callable<Integer> {
    private static final double PIXELS = Kernels.WIDTH * Kernels.HEIGHT;

    @Option(names = "--rounds", defaultValue = "5", description = "of a second each (${DEFAULT-VALUE})")
    private int rounds = 5;

    @Override
    public Integer call() throws RunnerException {
        Collection<RunResult> results = new Runner(new OptionsBuilder()
                        .include(Kernels.class.getSimpleName())
                        .mode(Mode.AverageTime)
                        .timeUnit(TimeUnit.MILLISECONDS)
                        .forks(1)
                        .warmupIterations(3)
                        .warmupTime(TimeValue.seconds(1))
                        .measurementIterations(rounds)
                        .measurementTime(TimeValue.seconds(1))
                        .verbosity(VerboseMode.SILENT)
                        .build())
                .run();
        double bandwidth = results.stream()
                .filter(r -> name(r).equals("memory"))
                .mapToDouble(r -> bytes("memory") / nanos(r))
                .sum();
        Table table = Table.of(
                "kernels on one thread, %d x %d, memory %.1f GB/s read and written"
                        .formatted(Kernels.WIDTH, Kernels.HEIGHT, bandwidth),
                "kernel",
                "ns a pixel",
                "bytes a pixel",
                "GB/s",
                "times what memory alone takes");
        for (RunResult r : results) {
            double bytes = bytes(name(r));
            table.add(
                    name(r),
                    Row.number(nanos(r), 2),
                    Row.number(bytes, 2),
                    Row.number(bytes / nanos(r), 2),
                    Row.number(nanos(r) * bandwidth / bytes, 2));
        }
        table.print(System.out);
        return 0;
    }

    private static String name(RunResult result) {
        return result.getPrimaryResult().getLabel();
    }

    /** Nanoseconds a pixel. */
    private static double nanos(RunResult result) {
        return result.getPrimaryResult().getScore() * 1e6 / PIXELS;
    }

    /** What a kernel has to read and write a pixel of a picture with three channels, if nothing is touched twice. */
    private static double bytes(String kernel) {
        return switch (kernel) {
            case "memory" -> 4 + 4;
            // A JPEG of half a byte a pixel in, three bytes out.
            case "decode" -> 0.5 + 3;
            case "tone" -> 3 + 12;
            case "luminance" -> 12 + 4;
            case "halve", "detail" -> 4 + 1;
            case "place" -> 12 + 12;
            case "survey", "placeMap" -> 4;
            default -> throw new IllegalArgumentException("nothing is known of the bytes of kernel " + kernel);
        };
    }
}
