package org.stook.comparison.command;

import java.io.IOException;
import java.util.concurrent.Callable;
import org.stook.comparison.table.Table;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** What a composite must not do to noise, edges and colours. */
@Command(name = "checks", description = "Noise of flat patches, slanted edge and colour patches of the composite.")
public final class ChecksCommand implements Callable<Integer> {
    @Mixin
    private BenchOptions options = new BenchOptions();

    @Option(names = "--height", defaultValue = "1000", description = "of the frames, pixels, 3:2 (${DEFAULT-VALUE})")
    private int height = 1000;

    @Option(names = "--seed", defaultValue = "7", description = "(${DEFAULT-VALUE})")
    private long seed = 7;

    @Override
    public Integer call() throws IOException, InterruptedException {
        Table table = Table.ofChecks("cards of %d x %d, 9 frames".formatted(height * 3 / 2, height));
        new NoiseCheck(height, options.threads()).addTo(table);
        new EdgeCheck(height, seed, options).addTo(table);
        new PatchCheck(height, seed, options).addTo(table);
        table.print(System.out);
        return 0;
    }
}
