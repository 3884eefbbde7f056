package org.stook.scenes;

import java.io.IOException;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.Arrays;
import java.util.concurrent.Callable;
import java.util.stream.Collectors;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Motion;
import org.stook.scenes.bracket.Rig;
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
            description = "jpeg, jpeg420, tiff8, tiff16, dng12, dng14 or dng14jpeg (${DEFAULT-VALUE})")
    private String format = "jpeg";

    @Option(names = "--breathing", defaultValue = "0.3", description = "per cent of scale a frame (${DEFAULT-VALUE})")
    private double breathing;

    @Option(
            names = "--flicker",
            defaultValue = "0.05",
            description = "greatest change of exposure, EV (${DEFAULT-VALUE})")
    private double flicker;

    @Option(names = "--shift", defaultValue = "2", description = "greatest shift, pixels (${DEFAULT-VALUE})")
    private double shift;

    @Option(names = "--turn", defaultValue = "0.03", description = "greatest turn, degrees (${DEFAULT-VALUE})")
    private double turn;

    @Option(
            names = "--circle",
            defaultValue = "1.4",
            description = "circle of confusion that counts as sharp, pixels: settles the step (${DEFAULT-VALUE})")
    private double circle;

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

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            description = "this text")
    private boolean help;

    /** Exit code 0 when all is written, 2 on a wrong option, 1 when writing failed. */
    public static void main(String[] args) {
        System.exit(new CommandLine(new Main()).execute(args));
    }

    @Override
    public Integer call() {
        Bracket bracket = bracket();
        PrintWriter err = spec.commandLine().getErr();
        try {
            BracketWriter writer = new BracketWriter(bracket, frameFormat(), Camera.USUAL, firstTaken());
            Files.createDirectories(out);
            for (int i = 0; i < frames; i++) {
                err.println("frame " + (i + 1) + " of " + frames + ": " + writer.writeFrame(i, out));
            }
            if (!framesOnly) writer.writeTruth(out.resolve("truth"));
            return 0;
        } catch (IOException e) {
            err.println("cannot write to " + out + ", the bracket is not complete: " + e);
            return 1;
        }
    }

    private OffsetDateTime firstTaken() {
        try {
            return OffsetDateTime.parse(taken);
        } catch (DateTimeParseException e) {
            String problem = "--taken needs a time like 2026-03-02T09:00:00+01:00, got " + taken;
            throw new ParameterException(spec.commandLine(), problem, e);
        }
    }

    private Bracket bracket() {
        try {
            BracketPlan plan = BracketPlan.of(width, height, frames, seed).withFlicker(flicker);
            plan = plan.withMotion(new Motion(breathing / 100, shift, turn)).withRig(Rig.USUAL.withCircle(circle));
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
                        spec.commandLine(),
                        "no format " + format + "; there are "
                                + Arrays.stream(FrameFormat.values())
                                        .map(FrameFormat::word)
                                        .collect(Collectors.joining(", "))));
    }
}
