package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stook.comparison.Pictures;
import org.stook.comparison.run.Outcome;
import org.stook.comparison.run.Pipelines;
import org.stook.comparison.run.PlacedFrames;
import org.stook.comparison.stack.Fidelity;
import org.stook.comparison.stack.Oracle;
import org.stook.comparison.stack.RegistrationError;
import org.stook.comparison.stack.Resample;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.imaging.blend.BlendMethod;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Truth;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Whole jobs on generated stacks whose truth is known. */
@Command(name = "truth", description = "Registration and composites of generated stacks against their truth.")
public final class TruthCommand implements Callable<Integer> {
    private static final int MARGIN = 8;

    @Mixin
    private BenchOptions options = new BenchOptions();

    @Option(names = "--subject", split = ",", defaultValue = "mineral", description = "(${DEFAULT-VALUE})")
    private List<String> subjects = List.of("mineral");

    @Option(names = "--megapixels", defaultValue = "1.5", description = "size of a frame, 3:2 (${DEFAULT-VALUE})")
    private double megapixels = 1.5;

    @Option(names = "--frames", defaultValue = "12", description = "(${DEFAULT-VALUE})")
    private int frames = 12;

    @Option(names = "--seed", defaultValue = "7", description = "(${DEFAULT-VALUE})")
    private long seed = 7;

    @Option(names = "--flicker", defaultValue = "0", description = "greatest change of exposure, EV (${DEFAULT-VALUE})")
    private double flicker;

    @Override
    public Integer call() throws IOException, InterruptedException {
        int height = (int) Math.round(Math.sqrt(megapixels * 1e6 / 1.5) / 4) * 4;
        BracketPlan plan = BracketPlan.of(height * 3 / 2, height, frames, seed).withFlicker(flicker);
        for (String subject : subjects) {
            String name = String.format(Locale.ROOT, "%s-%.1fMP-%d-%d", subject, megapixels, frames, seed);
            judge(new SceneStack(name, Bracket.of(Subjects.named(subject, seed), plan), FrameFormat.JPEG));
        }
        return 0;
    }

    private void judge(SceneStack stack) throws IOException, InterruptedException {
        Path folder = stack.frames(options.stacks());
        Pipelines pipelines = options.pipelines(stack.name());
        Outcome stook = Attempt.of(() -> pipelines.stook(folder));
        int reference = stook == null ? stack.bracket().plan().reference() : stack.rank(stook.referenceFile());
        Outcome theirs = pipelines.reference(folder, "--reference", Integer.toString(reference));
        Truth truth = stack.bracket().truthIn(reference);
        Area judged =
                Fidelity.shared(theirs.commonArea(), stook == null ? theirs.commonArea() : stook.commonArea(), MARGIN);
        Fidelity mine = stook == null ? NOTHING : fidelity(stook, truth, judged);
        Fidelity other = fidelity(theirs, truth, judged);
        Fidelity best = Fidelity.of(oracle(stack, folder, truth), wholeOf(truth), truth, judged);
        Table table = Table.ofChecks("%s: %d frames of %d x %d, reference frame %d, flicker %.2f EV"
                .formatted(
                        stack.name(),
                        frames,
                        truth.linear().width(),
                        truth.linear().height(),
                        reference + 1,
                        flicker));
        registration(table, stack, truth, stook, theirs);
        table.add(Row.of("PSNR subject, dB", 2)
                .stook(mine.subject())
                .reference(other.subject())
                .oracle(best.subject())
                .atLeast(other.subject() + 3));
        table.add(Row.of("PSNR silhouette band, dB", 2)
                .stook(mine.silhouette())
                .reference(other.silhouette())
                .oracle(best.silhouette())
                .atLeast(other.silhouette() + 1.5));
        table.add(Row.of("PSNR all, dB", 2)
                .stook(mine.all())
                .reference(other.all())
                .oracle(best.all()));
        blendsAlone(table, stack, folder, truth, theirs.commonArea(), judged);
        table.print(System.out);
    }

    /** The blends on frames put into place exactly, so that registration plays no part. */
    private void blendsAlone(Table table, SceneStack stack, Path folder, Truth truth, Area area, Area judged)
            throws IOException {
        PlacedFrames placed = placed(stack, folder, truth, area);
        Fidelity other = Fidelity.of(placed.blendedByReference(), area, truth, judged);
        for (BlendMethod method : BlendMethods.all()) {
            Fidelity mine = Fidelity.of(placed.blendedBy(method, options.threads()), area, truth, judged);
            String what = "blend alone, " + method.name() + ": ";
            table.add(Row.of(what + "subject, dB", 2).stook(mine.subject()).reference(other.subject()));
            table.add(Row.of(what + "silhouette band, dB", 2)
                    .stook(mine.silhouette())
                    .reference(other.silhouette()));
            table.add(Row.of(what + "all, dB", 2).stook(mine.all()).reference(other.all()));
        }
    }

    private static PlacedFrames placed(SceneStack stack, Path folder, Truth truth, Area area) {
        return new PlacedFrames() {
            @Override
            public int count() {
                return stack.bracket().plan().frames();
            }

            @Override
            public Frame frame(int index) throws IOException {
                Frame frame = Pictures.read(folder.resolve(stack.fileName(index)));
                return Resample.place(frame, Placement.of(truth.placement(index)), area);
            }
        };
    }

    private static final Fidelity NOTHING = new Fidelity(Double.NaN, Double.NaN, Double.NaN);

    private static void registration(
            Table table, SceneStack stack, Truth truth, @Nullable Outcome stook, Outcome theirs) {
        RegistrationError mine = stook == null
                ? new RegistrationError(Double.NaN, Double.NaN)
                : RegistrationError.of(stook.frames(), stack, truth);
        RegistrationError other = RegistrationError.of(theirs.frames(), stack, truth);
        table.add(Row.of("registration, px rms", 3)
                .stook(mine.rms())
                .reference(other.rms())
                .oracle(0)
                .atMost(0.15));
        table.add(Row.of("registration, worst corner px", 3)
                .stook(mine.worstCorner())
                .reference(other.worstCorner())
                .oracle(0)
                .atMost(0.5));
    }

    private static Fidelity fidelity(Outcome outcome, Truth truth, Area judged) throws IOException {
        return Fidelity.of(Pictures.read(outcome.composite()), outcome.commonArea(), truth, judged);
    }

    /** The oracle has the exact placements, but the same files. */
    private static Frame oracle(SceneStack stack, Path folder, Truth truth) throws IOException {
        Oracle oracle = new Oracle(SceneStack.frame(truth.encoded()));
        PlacedFrames placed = placed(stack, folder, truth, wholeOf(truth));
        for (int i = 0; i < placed.count(); i++) oracle.add(placed.frame(i));
        return oracle.composite();
    }

    private static Area wholeOf(Truth truth) {
        return Area.whole(truth.linear().width(), truth.linear().height());
    }
}
