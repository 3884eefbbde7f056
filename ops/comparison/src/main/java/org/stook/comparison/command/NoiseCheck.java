package org.stook.comparison.command;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.stook.comparison.run.PlacedFrames;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.imaging.blend.BlendMethod;
import org.stook.imaging.blend.BlendMethods;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Span;
import org.stook.scenes.optics.SensorNoise;
import org.stook.scenes.subject.Patch;
import org.stook.scenes.subject.Subject;
import org.stook.scenes.subject.Subjects;

/**
 * Noise of a composite against that of a single frame. The same still card is taken twice with other noise; what two results differ
 * by is noise and nothing else, whatever the card shows.
 */
final class NoiseCheck {
    private static final int FRAMES = 9;
    private static final SensorNoise NOISE = new SensorNoise(4000, 5);

    private final int height;
    private final int threads;

    NoiseCheck(int height, int threads) {
        this.height = height;
        this.threads = threads;
    }

    void addTo(Table table) throws IOException {
        BracketPlan plan =
                BracketPlan.of(height * 3 / 2, height, FRAMES, 1).still().withNoise(NOISE);
        List<Area> patches = new ArrayList<>();
        for (Patch patch : Subjects.patches()) patches.add(Cards.inner(patch, plan));
        judge(table, "flat patches of a card in focus, worst", plan, patches, 1.0);

        // The card lies as far behind the last frame as the sweep is long.
        BracketPlan away = plan.withSpan(new Span(2 * FRAMES - 2, 2 * FRAMES));
        Area middle = new Area(height / 4, height / 8, height, height * 3 / 4);
        judge(table, "no frame in focus", away, List.of(middle), 0.6);
    }

    private void judge(Table table, String what, BracketPlan plan, List<Area> areas, double bar) throws IOException {
        Subject card = Subjects.patchCard(1);
        PlacedFrames once = frames(card, plan);
        PlacedFrames again = frames(card, new Reseeded(plan, 2).plan());
        double theirs = worst(once.blendedByReference(), again.blendedByReference(), once, again, areas);
        for (BlendMethod method : BlendMethods.all()) {
            Frame one = once.blendedBy(method, threads);
            Frame two = again.blendedBy(method, threads);
            table.add(Row.of("noise, composite / frame, %s: %s".formatted(what, method.name()), 3)
                    .stook(worst(one, two, once, again, areas))
                    .reference(theirs)
                    .atMost(bar));
        }
    }

    private static PlacedFrames frames(Subject card, BracketPlan plan) {
        Bracket bracket = Bracket.of(card, plan);
        List<Frame> frames = new ArrayList<>();
        for (int i = 0; i < plan.frames(); i++) frames.add(SceneStack.frame(bracket.encoded(i)));
        return PlacedFrames.of(frames);
    }

    /** Greatest ratio of all areas and channels; a single frame's noise is the root mean square over all frames. */
    private static double worst(Frame one, Frame two, PlacedFrames once, PlacedFrames again, List<Area> areas)
            throws IOException {
        double worst = 0;
        for (Area area : areas) {
            for (int c = 0; c < one.channels(); c++) {
                double single = 0;
                for (int i = 0; i < once.count(); i++) {
                    single += difference(once.frame(i), again.frame(i), c, area) / once.count();
                }
                worst = Math.max(worst, Math.sqrt(difference(one, two, c, area) / single));
            }
        }
        return worst;
    }

    /** Mean squared difference less the square of the mean difference. */
    private static double difference(Frame one, Frame two, int channel, Area area) {
        double sum = 0;
        double squares = 0;
        for (int y = area.y(); y < area.y() + area.height(); y++) {
            for (int x = area.x(); x < area.x() + area.width(); x++) {
                double d = one.plane(channel).at(x, y) - two.plane(channel).at(x, y);
                sum += d;
                squares += d * d;
            }
        }
        double n = area.pixels();
        return squares / n - sum / n * (sum / n);
    }

    /** The same plan with other noise. */
    private record Reseeded(BracketPlan old, long seed) {
        BracketPlan plan() {
            return new BracketPlan(
                    old.width(),
                    old.height(),
                    old.frames(),
                    old.reference(),
                    seed,
                    old.motion(),
                    old.flicker(),
                    old.noise(),
                    old.rig(),
                    old.span(),
                    old.bumps());
        }
    }
}
