package org.stook.comparison.command;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import org.stook.comparison.run.Outcome;
import org.stook.comparison.run.Pipelines;
import org.stook.comparison.stack.RegistrationError;
import org.stook.comparison.stack.SceneStack;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Bump;
import org.stook.scenes.bracket.Truth;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** A sweep as studios have them: two frames swapped, one knocked by 8 px, one twice, the lens breathing by 11 %. */
@Command(name = "unruly", description = "A long sweep with swapped, bumped and doubled frames and 11 %% breathing.")
public final class UnrulyCommand implements Callable<Integer> {
    private static final double BUMP = 8;

    @Mixin
    private BenchOptions options = new BenchOptions();

    @Option(names = "--subject", defaultValue = "mineral", description = "(${DEFAULT-VALUE})")
    private String subject = "mineral";

    @Option(names = "--megapixels", defaultValue = "1.5", description = "size of a frame, 3:2 (${DEFAULT-VALUE})")
    private double megapixels = 1.5;

    @Option(names = "--frames", split = ",", defaultValue = "12,60", description = "(${DEFAULT-VALUE})")
    private List<Integer> frames = List.of(12, 60);

    @Option(names = "--seed", defaultValue = "7", description = "(${DEFAULT-VALUE})")
    private long seed = 7;

    @Override
    public Integer call() throws IOException, InterruptedException {
        for (int count : frames) judge(new Unruly(count));
        return 0;
    }

    private void judge(Unruly unruly) throws IOException, InterruptedException {
        SceneStack stack = unruly.stack(this);
        Path folder = stack.frames(options.stacks());
        Pipelines pipelines = options.pipelines(stack.name());
        Outcome stook = Attempt.of(() -> pipelines.stook(folder));
        Outcome theirs = Attempt.of(() -> pipelines.reference(folder));
        RegistrationError mine = error(stook, stack);
        RegistrationError other = error(theirs, stack);
        Table table = Table.ofChecks("%s: %d files, 11 %% breathing, two swapped, one bumped %.0f px, one twice"
                .formatted(stack.name(), stack.files(), BUMP));
        table.add(Row.of("registration, px rms", 3)
                .stook(mine.rms())
                .reference(other.rms())
                .atMost(0.3));
        table.add(Row.of("registration, worst corner px", 3)
                .stook(mine.worstCorner())
                .reference(other.worstCorner()));
        if (stook != null) {
            table.add(Row.of("frames out of order in the sweep found", 0)
                    .stook(inversions(stook, stack))
                    .bar("0", inversions(stook, stack) == 0));
            for (Map.Entry<String, String> odd : unruly.odd(stack).entrySet()) {
                boolean named = stook.remarks().containsKey(odd.getKey());
                table.add(Row.of("named: " + odd.getValue(), 0)
                        .stook(named ? 1 : 0)
                        .bar("1", named));
            }
            // Naming every frame would name the odd ones too.
            long others = stook.remarks().keySet().stream()
                    .filter(f -> !unruly.odd(stack).containsKey(f) && !f.equals(stack.fileName(unruly.twice())))
                    .count();
            table.add(Row.of("named without cause", 0).stook(others).bar("0", others == 0));
        }
        table.print(System.out);
        if (stook != null) stook.remarks().forEach((file, remark) -> System.out.println(file + ": " + remark));
    }

    private static RegistrationError error(@Nullable Outcome outcome, SceneStack stack) {
        if (outcome == null) return new RegistrationError(Double.NaN, Double.NaN);
        Truth truth = stack.bracket().truthIn(stack.rank(outcome.referenceFile()));
        return RegistrationError.of(outcome.frames(), stack, truth);
    }

    /** Neighbours in the found sweep that are in the wrong order, whichever end it begins with. */
    private static int inversions(Outcome outcome, SceneStack stack) {
        List<Integer> ranks = outcome.files().stream().map(stack::rank).toList();
        int up = 0;
        for (int i = 1; i < ranks.size(); i++) if (ranks.get(i) > ranks.get(i - 1)) up++;
        return Math.min(up, ranks.size() - 1 - up);
    }

    /**
     * Where things go wrong in a sweep.
     *
     * @param count frames of the bracket
     */
    private record Unruly(int count) {
        int swapped() {
            return count / 4;
        }

        int bumped() {
            return count * 2 / 3;
        }

        int twice() {
            return count * 5 / 6;
        }

        SceneStack stack(UnrulyCommand command) {
            int height = (int) Math.round(Math.sqrt(command.megapixels * 1e6 / 1.5) / 4) * 4;
            BracketPlan plan = BracketPlan.of(height * 3 / 2, height, count, command.seed)
                    .withTotalBreathing(0.11)
                    .withBumps(new Bump(bumped(), BUMP, 0, false));
            // Sixty frames of the usual steps would defocus the ends beyond what a lens does at this size.
            if (count > 20) plan = plan.withRig(plan.rig().withCircle(plan.rig().circle() * 12 / count));
            List<Integer> order = new ArrayList<>();
            for (int i = 0; i < count; i++) order.add(i);
            order.set(swapped(), swapped() + 2);
            order.set(swapped() + 2, swapped());
            order.add(twice() + 1, twice());
            String name = String.format(
                    Locale.ROOT, "unruly-%s-%.1fMP-%d-%d", command.subject, command.megapixels, count, command.seed);
            Bracket bracket = Bracket.of(Subjects.named(command.subject, command.seed), plan);
            return new SceneStack(name, bracket, FrameFormat.JPEG, order);
        }

        /** Files that must be named, with what is wrong. */
        Map<String, String> odd(SceneStack stack) {
            Map<String, String> odd = new LinkedHashMap<>();
            odd.put(stack.fileName(swapped()), "first of the swapped");
            odd.put(stack.fileName(swapped() + 2), "second of the swapped");
            odd.put(stack.fileName(bumped()), "the bumped one");
            odd.put(stack.fileName(twice() + 1), "the one that comes twice");
            return odd;
        }
    }
}
