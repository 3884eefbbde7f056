package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.stook.comparison.Pictures;
import org.stook.comparison.metrics.Colours;
import org.stook.comparison.run.Outcome;
import org.stook.comparison.run.Pipelines;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Patch;
import org.stook.scenes.subject.Subjects;

/** Twelve colours and twelve greys through the whole path, with flicker between the frames, against the reference frame. */
final class PatchCheck {
    private final SceneStack stack;
    private final BenchOptions options;

    PatchCheck(int height, long seed, BenchOptions options) {
        BracketPlan plan = BracketPlan.of(height * 3 / 2, height, 9, seed);
        stack = new SceneStack("patches-" + height, Bracket.of(Subjects.patchCard(seed), plan), FrameFormat.JPEG);
        this.options = options;
    }

    void addTo(Table table) throws IOException, InterruptedException {
        Path frames = stack.frames(options.stacks());
        Pipelines pipelines = options.pipelines(stack.name());
        double[] mine = differences(Attempt.of(() -> pipelines.stook(frames)), frames);
        double[] theirs = differences(Attempt.of(() -> pipelines.reference(frames)), frames);
        table.add(Row.of("24 patches, mean delta E 2000 to the reference frame", 3)
                .stook(mine[0])
                .reference(theirs[0])
                .atMost(0.4));
        table.add(Row.of("24 patches, greatest delta E 2000", 3).stook(mine[1]).reference(theirs[1]));
    }

    /** Mean and greatest. */
    private double[] differences(@Nullable Outcome outcome, Path frames) throws IOException {
        if (outcome == null) return new double[] {Double.NaN, Double.NaN};
        Frame composite = Pictures.read(outcome.composite());
        Frame reference = Pictures.read(frames.resolve(outcome.referenceFile()));
        BracketPlan plan = stack.bracket().plan();
        Placement placement = Placement.of(
                stack.bracket().pose(stack.rank(outcome.referenceFile())).placement());
        double sum = 0;
        double greatest = 0;
        for (Patch patch : Subjects.patches()) {
            double x = patch.left() + patch.size() / 2;
            double y = patch.top() + patch.size() / 2;
            Area inReference = Cards.around(x, y, patch.size() / 2, plan, placement);
            Area inComposite = new Area(
                    inReference.x() - outcome.commonArea().x(),
                    inReference.y() - outcome.commonArea().y(),
                    inReference.width(),
                    inReference.height());
            double difference = Colours.difference(composite, inComposite, reference, inReference);
            sum += difference;
            greatest = Math.max(greatest, difference);
        }
        return new double[] {sum / Subjects.patches().size(), greatest};
    }
}
