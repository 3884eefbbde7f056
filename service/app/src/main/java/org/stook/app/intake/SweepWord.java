package org.stook.app.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.stook.imaging.survey.BorderDetail;
import org.stook.imaging.survey.Coverage;
import org.stook.imaging.survey.Framing;
import org.stook.imaging.survey.SweepSurvey;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;
import tools.jackson.databind.node.ObjectNode;

/**
 * The word at the table: is the sweep whole, and if not, what is missing. Kept as JSON in {@code stack.word}.
 *
 * @param frames of the sweep
 * @param faults what is missing; none: whole
 */
record SweepWord(int frames, List<Fault> faults) {
    /** @param kind one word, for programs */
    record Fault(String kind, String sentence) {}

    /** Too few frames to say anything of coverage. */
    static final int FEWEST = 4;

    /** @param names of the frames, in capture order */
    static SweepWord of(SweepSurvey sweep, Framing framing, List<String> names) {
        List<Fault> faults = new ArrayList<>();
        int frames = sweep.order().length;
        if (frames < FEWEST) {
            faults.add(new Fault("SHORT", "only %d frames: too few to judge the sweep".formatted(frames)));
            return new SweepWord(frames, faults);
        }
        Coverage coverage = sweep.coverage();
        if (coverage.isOpenAtFirst()) {
            faults.add(new Fault(
                    "FIRST_END_OPEN",
                    open(coverage.openAtFirst(), "before the first frame, " + names.get(sweep.order()[0]))));
        }
        for (Coverage.Gap gap : coverage.gaps()) {
            faults.add(new Fault(
                    "GAP",
                    words(
                            "gap between %s and %s, %.1f steps wide",
                            names.get(gap.before()), names.get(gap.after()), gap.steps())));
        }
        if (coverage.isOpenAtLast()) {
            faults.add(new Fault(
                    "LAST_END_OPEN",
                    open(coverage.openAtLast(), "behind the last frame, " + names.get(sweep.order()[frames - 1]))));
        }
        sweep.shaken()
                .forEach(frame -> faults.add(
                        new Fault("SHAKEN", names.get(frame) + " is shaken: less sharp than its neighbours")));
        if (!framing.leaves().isEmpty()) {
            faults.add(new Fault(
                    "LEAVES_FRAME",
                    "the subject leaves the frame at the " + sides(framing.leaves())
                            + ": it is in focus up to the border"));
        }
        if (!framing.tight().isEmpty()) {
            faults.add(new Fault(
                    "TIGHT_BORDER",
                    words(
                            "the border is too tight at the %s: the picture breathes by about %.0f %%, which takes %.0f %% of it at each side",
                            sides(framing.tight()), 100 * framing.breathing(), 50 * framing.breathing())));
        }
        return new SweepWord(frames, faults);
    }

    private static String sides(Set<BorderDetail.Side> sides) {
        return sides.stream()
                .sorted()
                .map(side -> side.name().toLowerCase(Locale.ROOT))
                .collect(Collectors.joining(" and the "));
    }

    private static String open(double share, String where) {
        return words("open end: %.0f %% of the subject lies %s", 100 * share, where);
    }

    private static String words(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }

    String json() {
        ObjectNode json = JsonMapper.builder().build().createObjectNode();
        json.put("whole", faults.isEmpty()).put("frames", frames).put("by", "intake");
        ArrayNode all = json.putArray("faults");
        faults.forEach(fault -> all.addObject().put("kind", fault.kind()).put("sentence", fault.sentence()));
        return json.toString();
    }
}
