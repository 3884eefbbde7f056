package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.stook.comparison.run.WarmJobs;
import org.stook.comparison.stack.FrameFiles;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Runs one pipeline several times in one process, so that it can be timed once the runtime is warm. */
@Command(
        name = "again",
        description = "Runs a pipeline several times in one process; tells how long the first and the last runs took.")
public final class AgainCommand implements Callable<Integer> {
    @Option(names = "--pipeline", required = true, description = "${COMPLETION-CANDIDATES}")
    private WarmJobs.Pipeline pipeline = WarmJobs.Pipeline.STOOK;

    @Mixin
    private JobFiles files = new JobFiles();

    @Option(names = "--seconds", required = true, description = "file for the first and the median of the last three")
    @SuppressWarnings("NullAway.Init") // required
    private Path seconds;

    @Option(names = "--times", defaultValue = "8", description = "(${DEFAULT-VALUE})")
    private int times = 8;

    @Override
    public Integer call() throws IOException {
        WarmJobs jobs = new WarmJobs(FrameFiles.in(files.frames()), files.out(), files.threads());
        jobs.run(pipeline, times).write(seconds);
        return 0;
    }
}
