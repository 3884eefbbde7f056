package org.stook.imaging.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.composite.CannotCompose;
import org.stook.imaging.composite.ComposeOrder;
import org.stook.imaging.composite.Composition;
import org.stook.imaging.composite.EngineVersion;
import org.stook.imaging.composite.Sha256;
import org.stook.imaging.composite.TemporaryFolder;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code repeat}: makes a composite again from its record and compares the bytes. */
@Command(
        name = "repeat",
        mixinStandardHelpOptions = true,
        description = "Makes a published composite again from its record and its frames, and compares the bytes.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:made again, byte for byte the same",
            "1:a fault of the program",
            "2:wrong command line",
            "3:no composite can be made of these frames",
            "4:the settings in the record are wrong",
            "5:a file cannot be read or written, or a frame is not there",
            "6:another engine version made it; nothing was done",
            "7:made again, but the bytes differ"
        })
final class Repeat implements Callable<Integer> {
    private static final int OTHER_ENGINE = 6;
    private static final int DIFFERS = 7;

    @Spec
    @Nullable
    CommandSpec spec;

    @Parameters(paramLabel = "RECORD", description = "record of the publication (.json), or folder of an unpacked bag")
    Path record = Path.of("");

    @Option(
            names = "--frames",
            paramLabel = "DIR",
            description = "folder that the frames are in, at any depth and under any name (default: the bag)")
    @Nullable
    Path frames;

    @Option(
            names = "--out",
            paramLabel = "FILE.tif",
            description = "keeps the new composite (default: it is thrown away)")
    @Nullable
    Path out;

    @Option(
            names = "--threads",
            paramLabel = "N",
            description = "threads to use (default: all processors); no matter which")
    int threads = Runtime.getRuntime().availableProcessors();

    @Option(names = "--any-engine", description = "try with this engine though another made it")
    boolean anyEngine;

    @Override
    public Integer call() throws CannotCompose, IOException {
        PrintWriter console = Objects.requireNonNull(spec).commandLine().getOut();
        RecordedWork work = RecordedWork.read(record);
        if (!work.engineVersion().equals(EngineVersion.current()) && !anyEngine) {
            console.printf(
                    "%s was made by engine version %s, this is %s: other versions may give other bytes. Use stook-imaging.jar of"
                            + " version %s, or --any-engine to see%n",
                    record, work.engineVersion(), EngineVersion.current(), work.engineVersion());
            console.flush();
            return OTHER_ENGINE;
        }
        try (TemporaryFolder scratch = TemporaryFolder.create("stook-repeat")) {
            String made = make(work, scratch.path());
            boolean same = made.equals(work.resultSha256());
            console.printf(
                    "%s: made again with %d threads by engine version %s, %s%n",
                    record,
                    threads,
                    EngineVersion.current(),
                    same
                            ? "byte for byte the same (SHA-256 " + made + ")"
                            : "but it differs: found SHA-256 " + made + ", expected " + work.resultSha256());
            console.flush();
            return same ? 0 : DIFFERS;
        }
    }

    /** The very way of a worker. */
    private String make(RecordedWork work, Path scratch) throws CannotCompose, IOException {
        Path folder = frames != null ? frames : record;
        if (!Files.isDirectory(folder)) {
            throw new IOException(folder + " is no folder of frames; name one with --frames");
        }
        List<Path> files = KeptFrames.lay(work.frames(), folder, scratch);
        Path master = out != null ? out : scratch.resolve("master.tif");
        try (StageLine line = StageLine.onTerminal();
                Composition composition = new Composition(new ComposeOrder(files, work.recipe(), threads), line)) {
            composition.survey();
            composition.register();
            composition.blend();
            composition.finish(master, Optional.empty());
        }
        return Sha256.of(master);
    }
}
