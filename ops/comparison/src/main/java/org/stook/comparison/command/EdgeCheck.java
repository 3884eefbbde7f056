package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stook.comparison.Pictures;
import org.stook.comparison.metrics.Colours;
import org.stook.comparison.metrics.FrequencyResponse;
import org.stook.comparison.metrics.SlantedEdge;
import org.stook.comparison.run.Outcome;
import org.stook.comparison.run.Pipelines;
import org.stook.comparison.run.PlacedFrames;
import org.stook.comparison.run.Placing;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Span;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

/**
 * The four edges of a turned square through the whole path. The square is sharpest in the third of nine frames while the middle one
 * is the reference, so that the sharp frame has to be moved by parts of a pixel. All is measured in the composite's geometry; the
 * mark is the best frame put there by a kernel that changes no contrast.
 */
final class EdgeCheck {
    private static final int FRAMES = 9;
    private static final int EDGES = 4;
    private static final double TURN = Math.toRadians(5);
    private static final double HALF_SIDE = 0.2;
    private static final double REGION = 0.14;
    private static final String NAME = "slanted edge, ";

    private final SceneStack stack;
    private final BenchOptions options;

    EdgeCheck(int height, long seed, BenchOptions options) {
        BracketPlan plan = BracketPlan.of(height * 3 / 2, height, FRAMES, seed)
                .withFlicker(0)
                .withSpan(new Span(1, 3));
        stack = new SceneStack("edge-" + height, Bracket.of(Subjects.slantedEdge(seed), plan), FrameFormat.TIFF_16);
        this.options = options;
    }

    void addTo(Table table) throws IOException, InterruptedException {
        Path frames = stack.frames(options.stacks());
        Pipelines pipelines = options.pipelines(stack.name());
        Edges mine = edges(Attempt.of(() -> pipelines.stook(frames)), frames, Placing.STOOK);
        Edges other = edges(Attempt.of(() -> pipelines.reference(frames)), frames, Placing.REFERENCE);
        table.add(Row.of(NAME + "SFR50 of the best frame, cycles/px, least of 4", 3)
                .oracle(least(mine.taken)));
        table.add(Row.of(NAME + "SFR50: composite / best frame, least of 4", 3)
                .stook(ratio(mine.composite, mine.taken))
                .reference(ratio(other.composite, other.taken))
                .oracle(1)
                .atLeast(0.98));
        table.add(Row.of(NAME + "of this placing: best frame placed / as taken", 3)
                .stook(ratio(mine.placed, mine.taken))
                .reference(ratio(other.placed, other.taken))
                .oracle(1));
        table.add(Row.of(NAME + "of this blending: composite / best frame placed", 3)
                .stook(ratio(mine.composite, mine.placed))
                .reference(ratio(other.composite, other.placed))
                .oracle(1));
        table.add(Row.of(NAME + "greatest SFR of 4", 3)
                .stook(greatest(mine.composite))
                .reference(greatest(other.composite))
                .oracle(greatest(mine.taken))
                .atMost(1.02));
        table.add(Row.of(NAME + "of this placing: greatest SFR of the best frame placed", 3)
                .stook(greatest(mine.placed))
                .reference(greatest(other.placed)));
    }

    /**
     * Responses of the four edges, none if the job failed.
     *
     * @param composite what the pipeline made
     * @param placed the best frame, drawn into place as the pipeline does
     * @param taken the best frame as it was taken
     */
    private record Edges(
            List<FrequencyResponse> composite, List<FrequencyResponse> placed, List<FrequencyResponse> taken) {}

    private Edges edges(@Nullable Outcome outcome, Path frames, Placing placing) throws IOException {
        if (outcome == null) return new Edges(List.of(), List.of(), List.of());
        return new Edges(
                measure(Pictures.read(outcome.composite()), outcome),
                best(outcome, PlacedFrames.of(outcome, frames, placing, outcome.commonArea())),
                best(outcome, PlacedFrames.of(outcome, frames, Placing.AS_TAKEN, outcome.commonArea())));
    }

    private List<FrequencyResponse> best(Outcome outcome, PlacedFrames frames) throws IOException {
        List<FrequencyResponse> best = measure(frames.frame(0), outcome);
        for (int i = 1; i < frames.count(); i++) {
            List<FrequencyResponse> next = measure(frames.frame(i), outcome);
            for (int e = 0; e < EDGES; e++) {
                if (next.get(e).half() > best.get(e).half()) best.set(e, next.get(e));
            }
        }
        return best;
    }

    private List<FrequencyResponse> measure(Frame picture, Outcome outcome) {
        Placement toPicture = Placement.of(stack.bracket()
                        .pose(stack.rank(outcome.referenceFile()))
                        .placement())
                .then(Placement.affine(
                        1,
                        0,
                        -outcome.commonArea().x(),
                        0,
                        1,
                        -outcome.commonArea().y()));
        Plane linear = linear(picture);
        List<FrequencyResponse> responses = new ArrayList<>();
        for (int edge = 0; edge < EDGES; edge++) {
            double angle = TURN + edge * Math.PI / 2;
            double x = HALF_SIDE * Math.cos(angle);
            double y = HALF_SIDE * Math.sin(angle);
            responses.add(SlantedEdge.measure(
                    linear, Cards.around(x, y, REGION, stack.bracket().plan(), toPicture)));
        }
        return responses;
    }

    private static double ratio(List<FrequencyResponse> one, List<FrequencyResponse> other) {
        double least = Double.NaN;
        for (int e = 0; e < one.size(); e++) {
            double ratio = one.get(e).half() / other.get(e).half();
            least = Double.isNaN(least) ? ratio : Math.min(least, ratio);
        }
        return least;
    }

    private static double least(List<FrequencyResponse> responses) {
        return responses.stream().mapToDouble(FrequencyResponse::half).min().orElse(Double.NaN);
    }

    private static double greatest(List<FrequencyResponse> responses) {
        return responses.stream().mapToDouble(FrequencyResponse::greatest).max().orElse(Double.NaN);
    }

    /** The card is neutral, so that green stands for luminance. */
    private static Plane linear(Frame frame) {
        Plane out = new Plane(frame.width(), frame.height());
        for (int i = 0; i < frame.width() * frame.height(); i++) {
            out.samples()[i] = (float) Colours.linear(frame.plane(1).samples()[i]);
        }
        return out;
    }
}
