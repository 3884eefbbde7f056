package org.stook.comparison.command;

import com.sun.management.OperatingSystemMXBean;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Callable;
import org.stook.comparison.kernel.MachineLimits;
import org.stook.comparison.kernel.StageCost;
import org.stook.comparison.run.Decoding;
import org.stook.comparison.run.WarmJobs;
import org.stook.comparison.stack.FrameFiles;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What each stage must move and calculate, what the machine could do that in, and what it takes. */
@Command(name = "costs", description = "Bytes and operations of each stage, against what the machine can do at most.")
public final class CostsCommand implements Callable<Integer> {
    @Mixin
    private BenchOptions options = new BenchOptions();

    @Mixin
    private TimedStack timed = new TimedStack();

    @Option(names = "--times", defaultValue = "3", description = "jobs, the last of which is timed (${DEFAULT-VALUE})")
    private int times = 3;

    private final OperatingSystemMXBean system = ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class);
    private final Map<String, Double> wall = new HashMap<>();
    private final Map<String, Double> processor = new HashMap<>();

    @Override
    public Integer call() throws IOException {
        SceneStack stack = timed.stack();
        Path folder = stack.frames(options.stacks());
        WarmJobs jobs = new WarmJobs(FrameFiles.in(folder), options.stacks().resolve("costs.tif"), options.threads());
        for (int i = 0; i < times; i++) jobs.stook(this::time);
        MachineLimits limits = MachineLimits.measure(options.threads());
        double decoding = Decoding.seconds(FrameFiles.in(folder), options.threads(), times);
        Table table = Table.of(
                "%s, %d threads: memory %.1f bytes/ns, vector code %.1f operations/ns"
                        .formatted(
                                stack.name(),
                                options.threads(),
                                limits.bytesPerNanosecond(),
                                limits.operationsPerNanosecond()),
                "stage",
                "bytes a pixel",
                "operations a pixel",
                "floor by memory, s",
                "floor by arithmetic, s",
                "decoding alone, s",
                "took, s",
                "processor, s",
                "times decoding and the higher floor");
        for (StageCost cost : StageCost.all()) table.add(row(cost, limits, cost.decodes() ? decoding : 0));
        table.print(System.out);
        return 0;
    }

    private void time(String name, WarmJobs.Stage stage) throws IOException, org.stook.imaging.composite.CannotCompose {
        long start = System.nanoTime();
        long used = system.getProcessCpuTime();
        stage.run();
        wall.put(name, (System.nanoTime() - start) / 1e9);
        processor.put(name, (system.getProcessCpuTime() - used) / 1e9);
    }

    private String[] row(StageCost cost, MachineLimits limits, double decoding) {
        double pixels = timed.megapixels() * 1e6;
        double byMemory = pixels * cost.bytes(timed.frames()) / limits.bytesPerNanosecond() / 1e9;
        double byArithmetic = pixels * cost.operations(timed.frames()) / limits.operationsPerNanosecond() / 1e9;
        double took = wall.getOrDefault(cost.stage(), Double.NaN);
        return new String[] {
            cost.stage(),
            Row.number(cost.bytes(timed.frames()) / timed.frames(), 1),
            Row.number(cost.operations(timed.frames()) / timed.frames(), 0),
            Row.number(byMemory, 2),
            Row.number(byArithmetic, 2),
            Row.number(decoding, 2),
            Row.number(took, 2),
            Row.number(processor.getOrDefault(cost.stage(), Double.NaN), 2),
            Row.number(took / (decoding + Math.max(byMemory, byArithmetic)), 1)
        };
    }
}
