package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.Callable;
import org.stook.comparison.run.WarmJobs;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Runs one pipeline several times in one process, so that it can be timed once the runtime is warm. */
@Command(
        name = "again",
        description = "Runs a pipeline several times in one process; tells how long the last run took.")
public final class AgainCommand implements Callable<Integer> {
    @Option(names = "--pipeline", required = true, description = "${COMPLETION-CANDIDATES}")
    private WarmJobs.Pipeline pipeline = WarmJobs.Pipeline.STOOK;

    @Option(names = "--frames", required = true, description = "folder of frames, in sweep order by name")
    @SuppressWarnings("NullAway.Init") // required
    private Path frames;

    @Option(names = "--out", required = true, description = "composite, TIFF of 16 bits")
    @SuppressWarnings("NullAway.Init") // required
    private Path out;

    @Option(names = "--seconds", required = true, description = "file for what the last run took")
    @SuppressWarnings("NullAway.Init") // required
    private Path seconds;

    @Option(names = "--threads", defaultValue = "2", description = "(${DEFAULT-VALUE})")
    private int threads = 2;

    @Option(names = "--times", defaultValue = "3", description = "(${DEFAULT-VALUE})")
    private int times = 3;

    @Override
    public Integer call() throws IOException {
        WarmJobs jobs = new WarmJobs(ReferenceCommand.framesIn(frames), out, threads);
        Files.writeString(seconds, Double.toString(jobs.last(pipeline, times)));
        return 0;
    }
}
