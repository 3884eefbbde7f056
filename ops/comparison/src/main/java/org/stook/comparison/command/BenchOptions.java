package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import org.stook.comparison.run.Pipelines;
import picocli.CommandLine.Option;

/** Options that all benches share. */
final class BenchOptions {
    @Option(
            names = "--work",
            defaultValue = "${sys:stook.bench.work}",
            description = "folder for stacks and composites (${DEFAULT-VALUE})")
    private Path work = Path.of("target/bench");

    @Option(
            names = "--data",
            defaultValue = "${sys:stook.published-data}",
            description = "folder of the published data sets")
    private Path data = Path.of("data");

    @Option(names = "--threads", defaultValue = "2", description = "of each pipeline (${DEFAULT-VALUE})")
    private int threads = 2;

    Path stacks() {
        return work.resolve("stacks");
    }

    Path data(String set) throws IOException {
        Path folder = data.resolve(set);
        if (!java.nio.file.Files.isDirectory(folder)) {
            throw new IOException(
                    "no published data at %s; give their folder with --data".formatted(folder.toAbsolutePath()));
        }
        return folder;
    }

    int threads() {
        return threads;
    }

    Pipelines pipelines(String name) throws IOException {
        return new Pipelines(work.resolve("composites").resolve(name), threads);
    }
}
