package org.stook.scenes;

import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.concurrent.Callable;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.optics.SensorNoise;
import org.stook.scenes.subject.Subjects;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** Writes a focus bracket and the truth about it into a folder. */
@Command(
        name = "scenes",
        mixinStandardHelpOptions = true,
        sortOptions = false,
        description = "Writes a generated focus bracket and the truth about it into a folder.")
public final class Main implements Callable<Integer> {
    @Spec
    @SuppressWarnings("NullAway.Init") // set by the command line
    private CommandLine.Model.CommandSpec spec;

    @Option(names = "--subject", defaultValue = "mineral", description = "which subject (${DEFAULT-VALUE})")
    private String subject = "mineral";

    @Option(names = "--width", defaultValue = "1500", description = "pixels (${DEFAULT-VALUE})")
    private int width;

    @Option(names = "--height", defaultValue = "1000", description = "pixels (${DEFAULT-VALUE})")
    private int height;

    @Option(names = "--frames", defaultValue = "12", description = "how many (${DEFAULT-VALUE})")
    private int frames;

    @Option(names = "--seed", defaultValue = "1", description = "number that all chance comes from (${DEFAULT-VALUE})")
    private long seed;

    @Option(
            names = "--format",
            defaultValue = "jpeg",
            description = "jpeg, jpeg420, tiff8 or tiff16 (${DEFAULT-VALUE})")
    private String format = "jpeg";

    @Option(names = "--breathing", defaultValue = "0.3", description = "per cent of scale a frame (${DEFAULT-VALUE})")
    private double breathing;

    @Option(
            names = "--flicker",
            defaultValue = "0.05",
            description = "greatest change of exposure, EV (${DEFAULT-VALUE})")
    private double flicker;

    @Option(
            names = "--full-well",
            defaultValue = "40000",
            description = "electrons at white, 0 for no noise (${DEFAULT-VALUE})")
    private double fullWell;

    @Option(
            names = "--taken",
            defaultValue = "2026-03-02T09:00:00+01:00",
            description = "time of the first frame (${DEFAULT-VALUE})")
    private String taken = "2026-03-02T09:00:00+01:00";

    @Option(names = "--no-truth", description = "frames only")
    private boolean framesOnly;

    @Option(names = "--out", required = true, description = "folder; made if absent")
    @SuppressWarnings("NullAway.Init") // required
    private Path out;

    /** Exit code 0 when all is written, 2 on a wrong option, 1 when writing failed. */
    public static void main(String[] args) {
        System.exit(new CommandLine(new Main()).execute(args));
    }

    @Override
    public Integer call() throws Exception {
        Bracket bracket = bracket();
        BracketWriter writer = new BracketWriter(bracket, frameFormat(), Camera.USUAL, OffsetDateTime.parse(taken));
        Files.createDirectories(out);
        for (int i = 0; i < frames; i++) {
            spec.commandLine()
                    .getErr()
                    .println("frame " + (i + 1) + " of " + frames + ": " + writer.writeFrame(i, out));
        }
        if (!framesOnly) writer.writeTruth(out.resolve("truth"));
        return 0;
    }

    private Bracket bracket() {
        try {
            BracketPlan plan = BracketPlan.of(width, height, frames, seed).withFlicker(flicker);
            plan = plan.withTotalBreathing(breathing / 100 * (frames - 1));
            plan = plan.withNoise(fullWell > 0 ? new SensorNoise(fullWell, 5) : SensorNoise.NONE);
            return Bracket.of(Subjects.named(subject, seed), plan);
        } catch (IllegalArgumentException e) {
            throw new ParameterException(spec.commandLine(), e.getMessage(), e);
        }
    }

    private FrameFormat frameFormat() {
        return Arrays.stream(FrameFormat.values())
                .filter(f -> f.word().equals(format))
                .findFirst()
                .orElseThrow(() -> new ParameterException(
                        spec.commandLine(), "no format " + format + "; there are jpeg, jpeg420, tiff8 and tiff16"));
    }
}
