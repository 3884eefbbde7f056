package org.stook.comparison.run;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** Starts the two pipelines on a folder of frames. */
public final class Pipelines {
    /** The library's memory lies outside the heap; this lifts its binding's own bound. */
    private static final List<String> REFERENCE_OPTIONS =
            List.of("-Xmx256m", "-Dorg.bytedeco.javacpp.maxbytes=0", "-Dorg.bytedeco.javacpp.maxphysicalbytes=0");

    private final Path folder;
    private final int threads;

    /**
     * @param folder for composites, reports and logs
     * @param threads that each pipeline may use
     */
    public Pipelines(Path folder, int threads) throws IOException {
        this.folder = Files.createDirectories(folder);
        this.threads = threads;
    }

    /** Stook's command line, as built; extra options come last. */
    public Outcome stook(Path frames, String... options) throws IOException, InterruptedException {
        List<String> command = java("stook");
        command.addAll(javaOptions());
        command.addAll(List.of("-jar", System.getProperty("stook.imaging.jar", "stook-imaging.jar"), "compose"));
        command.addAll(List.of("--threads", Integer.toString(threads)));
        return run("stook", command, frames, options);
    }

    /** The pipeline on the general-purpose library. */
    public Outcome reference(Path frames, String... options) throws IOException, InterruptedException {
        List<String> command = java("reference");
        command.addAll(REFERENCE_OPTIONS);
        command.addAll(bench("reference"));
        command.addAll(List.of("--threads", Integer.toString(threads)));
        return run("reference", command, frames, options);
    }

    private static List<String> javaOptions() {
        return List.of(System.getProperty("stook.java-options", "-Xmx3g").trim().split("\\s+"));
    }

    private static List<String> bench(String command) {
        return List.of("-cp", System.getProperty("java.class.path"), "org.stook.comparison.Main", command);
    }

    /**
     * Seconds of runs of a pipeline in one process.
     *
     * @param times more than {@link WarmJobs#TIMED} by some, or the last are not warm
     */
    public WarmJobs.Times again(WarmJobs.Pipeline pipeline, Path frames, int times)
            throws IOException, InterruptedException {
        Path seconds = folder.resolve("again-" + pipeline + ".seconds");
        again(pipeline, frames, times, seconds);
        return WarmJobs.Times.read(seconds);
    }

    /** A process of Stook's that rehearses, as a worker does, and then does one job. */
    public Usage worker(Path frames) throws IOException, InterruptedException {
        return again(WarmJobs.Pipeline.STOOK, frames, 1, folder.resolve("worker.seconds"));
    }

    private Usage again(WarmJobs.Pipeline pipeline, Path frames, int times, Path seconds)
            throws IOException, InterruptedException {
        String name = "again-" + pipeline;
        List<String> command = java(name);
        command.addAll(pipeline == WarmJobs.Pipeline.STOOK ? javaOptions() : REFERENCE_OPTIONS);
        command.addAll(bench("again"));
        command.addAll(List.of("--pipeline", pipeline.name(), "--times", Integer.toString(times)));
        command.addAll(List.of("--threads", Integer.toString(threads), "--frames", frames.toString()));
        command.addAll(List.of("--out", folder.resolve(name + ".tif").toString(), "--seconds", seconds.toString()));
        return MeasuredProcess.run(command, folder.resolve(name + ".log"), collectorLog(name));
    }

    private Outcome run(String name, List<String> command, Path frames, String... options)
            throws IOException, InterruptedException {
        Path composite = folder.resolve(name + ".tif");
        Path report = folder.resolve(name + ".json");
        command.addAll(List.of("--frames", frames.toString(), "--out", composite.toString()));
        command.addAll(List.of("--report", report.toString()));
        command.addAll(List.of(options));
        Usage usage = MeasuredProcess.run(command, folder.resolve(name + ".log"), collectorLog(name));
        return Outcome.read(composite, report, usage);
    }

    private List<String> java(String name) {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        return new ArrayList<>(List.of(java, "-Xlog:gc:file=" + collectorLog(name)));
    }

    private Path collectorLog(String name) {
        return folder.resolve(name + ".gc");
    }
}
