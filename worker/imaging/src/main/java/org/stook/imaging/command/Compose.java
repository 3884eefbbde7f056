package org.stook.imaging.command;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.NotDirectoryException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.composite.CannotCompose;
import org.stook.imaging.composite.ComposeOrder;
import org.stook.imaging.composite.ComposeReport;
import org.stook.imaging.composite.Composition;
import org.stook.imaging.composite.FrameRecord;
import org.stook.imaging.composite.Recipe;
import org.stook.imaging.score.Score;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;

/** {@code compose}: a folder of frames in, one composite out. */
@Command(
        name = "compose",
        mixinStandardHelpOptions = true,
        description = "Composes the frames of a folder into one 16-bit TIFF. The frames are only read.",
        exitCodeListHeading = "%nExit codes:%n",
        exitCodeList = {
            "0:the composite was written",
            "1:a fault of the program",
            "2:wrong command line",
            "3:no composite can be made of these frames",
            "4:the settings file is wrong",
            "5:a file cannot be read or written"
        })
final class Compose implements Callable<Integer> {
    @Spec
    @Nullable
    CommandSpec spec;

    @Option(
            names = "--frames",
            required = true,
            paramLabel = "DIR",
            description = "folder with the frames of one stack")
    Path frames = Path.of("");

    @Option(names = "--out", required = true, paramLabel = "FILE.tif", description = "where the composite goes")
    Path out = Path.of("");

    @Option(
            names = "--settings",
            paramLabel = "FILE.json",
            description = "settings; without them tones stay as they are, flicker between frames is evened out")
    @Nullable
    Path settings;

    @Option(
            names = "--reference",
            paramLabel = "FILE",
            description = "name of the reference frame (default: the settings' one, else the middle of the sweep)")
    @Nullable
    Path reference;

    @Option(names = "--threads", paramLabel = "N", description = "threads to use (default: all processors)")
    int threads = Runtime.getRuntime().availableProcessors();

    @Option(names = "--report", paramLabel = "FILE.json", description = "where the report goes")
    @Nullable
    Path report;

    @Option(names = "--preview", paramLabel = "FILE.jpg", description = "where a small JPEG goes")
    @Nullable
    Path preview;

    @Option(names = "--jpeg", paramLabel = "FILE.jpg", description = "where a JPEG of the full size goes")
    @Nullable
    Path jpeg;

    @Option(
            names = "--source-map",
            paramLabel = "FILE.tif",
            description = "16-bit grey: rank of the frame each pixel mostly came from")
    @Nullable
    Path sourceMap;

    @Option(names = "--depth-map", paramLabel = "FILE.tif", description = "16-bit grey: 256 x position in the sweep")
    @Nullable
    Path depthMap;

    @Override
    public Integer call() throws CannotCompose, IOException {
        ComposeOrder order = new ComposeOrder(files(), recipe(), threads);
        try (StageLine line = StageLine.onTerminal();
                Composition composition = new Composition(order, line)) {
            composition.survey();
            composition.register();
            composition.blend();
            composition.finish(out, Optional.ofNullable(preview));
            composition.writeDerivatives(Optional.ofNullable(jpeg), Optional.empty());
            composition.writeMaps(Optional.ofNullable(sourceMap), Optional.ofNullable(depthMap));
            composition.score();
            line.close();
            conclude(composition.report());
        }
        return 0;
    }

    private List<Path> files() throws IOException {
        if (!Files.isDirectory(frames)) throw new NotDirectoryException(frames + " is no folder of frames");
        try (Stream<Path> entries = Files.list(frames)) {
            return entries.filter(Files::isRegularFile)
                    .filter(file -> !file.getFileName().toString().startsWith("."))
                    .sorted()
                    .toList();
        }
    }

    private Recipe recipe() throws IOException {
        Recipe recipe = settings == null ? Recipe.standard() : Recipe.parse(Files.readString(settings));
        if (reference == null || reference.getFileName() == null) return recipe;
        return recipe.withReference(reference.getFileName().toString());
    }

    private void conclude(ComposeReport made) throws IOException {
        if (report != null) Files.writeString(report, made.toJson() + "\n");
        var console = java.util.Objects.requireNonNull(spec).commandLine().getErr();
        for (FrameRecord frame : made.frames()) {
            if (!frame.reason().isEmpty()) console.println(frame.reason());
        }
        Score score = made.score();
        console.printf("%s: score %d, %s%n", out, score.total(), score.verdict());
        console.flush();
    }
}
