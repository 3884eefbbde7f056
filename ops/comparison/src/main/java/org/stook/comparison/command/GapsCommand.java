package org.stook.comparison.command;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import org.stook.comparison.sweep.TestSweep;
import org.stook.comparison.table.Row;
import org.stook.comparison.table.Table;
import org.stook.imaging.survey.SweepSurvey;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.subject.Subjects;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** What the survey says of sweeps from which frames are missing, whose ends are cut or one of whose frames is shaken. */
@Command(
        name = "gaps",
        description = "Missing frames, open ends and shaken frames found, false alarms on whole sweeps.")
public final class GapsCommand implements Callable<Integer> {
    private static final double RECALL = 0.95;
    private static final double FALSE_ALARMS = 0.02;
    /** Something is missing where so much of the subject is: a fault where nothing lies cannot be seen, nor does it matter. */
    private static final double LOST = 0.05;
    /** What lies so much of a step beyond the last frame left is not in focus in it. */
    private static final double STEP = 0.75;

    @Option(
            names = "--subjects",
            split = ",",
            defaultValue = "mineral,shell,watch,spray",
            description = "(${DEFAULT-VALUE})")
    private List<String> subjects = List.of();

    @Option(names = "--seeds", defaultValue = "6", description = "how many of each subject (${DEFAULT-VALUE})")
    private int seeds = 6;

    @Option(names = "--frames", split = ",", defaultValue = "9,14", description = "(${DEFAULT-VALUE})")
    private List<Integer> frames = List.of();

    @Option(names = "--height", defaultValue = "480", description = "of a frame, pixels, 3:2 (${DEFAULT-VALUE})")
    private int height = 480;

    @Option(names = "--smear", defaultValue = "6", description = "of the shaken frame, pixels (${DEFAULT-VALUE})")
    private int smear = 6;

    private final Map<String, int[]> counts = new LinkedHashMap<>();
    private final List<String> misses = new ArrayList<>();

    @Override
    public Integer call() {
        for (String subject : subjects) {
            for (int count : frames) {
                for (int seed = 1; seed <= seeds; seed++) {
                    BracketPlan plan = BracketPlan.of(height * 3 / 2, height, count, seed);
                    judge(
                            subject + " " + seed + ", " + count + " frames",
                            TestSweep.of(Subjects.named(subject, seed), plan),
                            seed);
                }
            }
        }
        Table table = Table.ofChecks("sweeps of %s, %s frames of %d x %d, %d of each"
                .formatted(subjects, frames, height * 3 / 2, height, seeds));
        int[] all = new int[2];
        counts.forEach((what, found) -> {
            double share = (double) found[0] / found[1];
            Row row = Row.of(what + " (of " + found[1] + ")", 3).stook(share);
            table.add(what.startsWith("whole") ? row.atMost(FALSE_ALARMS) : row);
            if (!what.startsWith("whole")) {
                all[0] += found[0];
                all[1] += found[1];
            }
        });
        table.add(Row.of("recall of all faults (of " + all[1] + ")", 3)
                .stook((double) all[0] / all[1])
                .atLeast(RECALL));
        table.print(System.out);
        misses.forEach(System.out::println);
        return 0;
    }

    private void judge(String name, TestSweep sweep, long seed) {
        int n = sweep.size();
        SweepSurvey whole = sweep.whole();
        count("whole sweeps, an alarm", alarm(whole), name, true, whole);
        for (int missing = 1; missing <= 2; missing++) {
            for (int first = 2; first + missing <= n - 2; first += 2) {
                SweepSurvey broken = sweep.without(first, missing);
                count(
                        missing + " frame" + (missing == 1 ? "" : "s") + " missing, found there",
                        gapAt(broken, first),
                        name + " from " + first,
                        false,
                        broken);
            }
        }
        for (int cut = 1; cut <= 3; cut++) {
            if (sweep.share(-n, cut - STEP) >= LOST) {
                SweepSurvey late = sweep.without(0, cut);
                count("near end cut, found open", late.coverage().isOpenAtFirst(), name + " by " + cut, false, late);
            }
            if (sweep.share(n - 1 - cut + STEP, 2 * n) >= LOST) {
                SweepSurvey early = sweep.without(n - cut, cut);
                count("far end cut, found open", early.coverage().isOpenAtLast(), name + " by " + cut, false, early);
            }
        }
        SplittableRandom random = new SplittableRandom(seed);
        for (int frame = 0; frame < n; frame += 2) {
            double degrees = random.nextDouble(180);
            if (sweep.share(frame - 0.5, frame + 0.5) < LOST) continue;
            SweepSurvey shaken = sweep.shaken(frame, smear, degrees);
            count(
                    "one frame shaken, named",
                    shaken.shaken().equals(List.of(frame)),
                    name + ", " + frame,
                    false,
                    shaken);
        }
    }

    private static boolean alarm(SweepSurvey sweep) {
        return !sweep.coverage().gaps().isEmpty()
                || sweep.coverage().isOpenAtFirst()
                || sweep.coverage().isOpenAtLast()
                || !sweep.shaken().isEmpty();
    }

    private static boolean gapAt(SweepSurvey sweep, int first) {
        return sweep.coverage().gaps().stream().anyMatch(gap -> gap.before() == first - 1 && gap.after() == first);
    }

    private void count(String what, boolean is, String name, boolean bad, SweepSurvey survey) {
        int[] found = counts.computeIfAbsent(what, w -> new int[2]);
        if (is) found[0]++;
        found[1]++;
        if (is == bad) {
            misses.add("%s: %s: gaps %s, open %.3f %.3f, shaken %s"
                    .formatted(
                            bad ? "false" : "missed",
                            what + ": " + name,
                            survey.coverage().gaps(),
                            survey.coverage().openAtFirst(),
                            survey.coverage().openAtLast(),
                            survey.shaken()));
        }
    }
}
