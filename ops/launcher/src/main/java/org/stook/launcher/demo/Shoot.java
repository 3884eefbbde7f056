package org.stook.launcher.demo;

import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.bracket.Stills;
import org.stook.scenes.file.BracketWriter;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.CameraDrop;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;
import org.stook.scenes.subject.Subject;

/** One piece on the table: its sweep, and what else falls into the folder while it is shot. */
final class Shoot {
    private static final FrameFormat FORMAT = FrameFormat.JPEG;
    private static final int GROWTH = 4;
    private static final double KEPT_OF_TRUNCATED = 0.6;

    /** What else falls into the folder. */
    enum Stray {
        BLACK,
        TEST_SHOT,
        TRUNCATED,
        EMPTY,
        TEXT,
        WRONG_SIZE
    }

    private final Path folder;
    private final BracketWriter writer;
    private final List<Stray> strays;

    Shoot(Path folder, Subject subject, BracketPlan plan, List<Stray> strays) {
        this.folder = folder;
        this.strays = List.copyOf(strays);
        writer = new BracketWriter(Bracket.of(subject, plan), FORMAT, Camera.USUAL, taken(plan.seed()));
    }

    private static OffsetDateTime taken(long seed) {
        return OffsetDateTime.parse("2026-03-02T09:00:00+01:00").plusMinutes(10 * seed);
    }

    /** The folder that the files fall into; its name is the subject's. */
    Path folder() {
        return folder;
    }

    /**
     * The files in the order in which they fall: the sweep, then the rest under the numbers that follow. All are rendered
     * here, so that a slow machine does not make the camera pause between two frames of a sweep.
     */
    List<CameraDrop> drops() {
        List<CameraDrop> drops = new ArrayList<>();
        for (int i = 0; i < writer.files(); i++) drops.add(drop(i, writer.frame(i)));
        for (int i = 0; i < strays.size(); i++) {
            int number = writer.files() + i;
            drops.add(drop(number, content(strays.get(i), number)));
        }
        return drops;
    }

    private CameraDrop drop(int number, byte[] content) {
        String name = String.format(Locale.ROOT, "HC_%04d.%s", number + 1, FORMAT.extension());
        return new CameraDrop(folder.resolve(name), () -> content, GROWTH);
    }

    private byte[] content(Stray stray, int number) {
        Bracket bracket = writer.bracket();
        return switch (stray) {
            case BLACK -> still(Stills.black(bracket.plan()), number);
            case TEST_SHOT -> still(Stills.testShot(bracket), number);
            case TRUNCATED -> truncated();
            case EMPTY -> new byte[0];
            case TEXT -> "Harrow Cabinet, list of loans\n".repeat(40).getBytes(StandardCharsets.US_ASCII);
            case WRONG_SIZE -> smaller();
        };
    }

    private byte[] still(Picture linear, int number) {
        return FrameWriter.bytes(linear.encoded(), FORMAT, writer.capture(number));
    }

    private byte[] truncated() {
        byte[] whole = writer.frame(writer.files() / 2);
        return Arrays.copyOf(whole, (int) (whole.length * KEPT_OF_TRUNCATED));
    }

    private byte[] smaller() {
        BracketPlan plan = writer.bracket().plan();
        BracketPlan small = plan.withSize(plan.width() * 3 / 4, plan.height() * 3 / 4);
        Bracket bracket = Bracket.of(writer.bracket().subject(), small);
        return new BracketWriter(bracket, FORMAT, Camera.USUAL, taken(plan.seed())).frame(writer.files() / 2);
    }
}
