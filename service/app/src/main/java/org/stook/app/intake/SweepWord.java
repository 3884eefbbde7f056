package org.stook.app.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.stook.imaging.survey.Coverage;
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

    /** An end counts as open when more of the subject than this is still getting sharper there. */
    private static final double OPEN = 0.12;
    /** Too few frames to say anything of coverage. */
    private static final int FEWEST = 4;

    /** @param names of the frames, by the indices of the coverage */
    static SweepWord of(Coverage coverage, List<String> names, int frames) {
        List<Fault> faults = new ArrayList<>();
        if (frames < FEWEST) {
            faults.add(new Fault("SHORT", "only %d frames: too few to judge the sweep".formatted(frames)));
            return new SweepWord(frames, faults);
        }
        end(faults, "FIRST_END_OPEN", "first", coverage.openAtFirst());
        end(faults, "LAST_END_OPEN", "last", coverage.openAtLast());
        for (Coverage.Gap gap : coverage.gaps()) {
            faults.add(new Fault(
                    "GAP",
                    String.format(
                            Locale.ROOT,
                            "gap between %s and %s: the step is %.1f times the usual one",
                            names.get(gap.before()),
                            names.get(gap.after()),
                            gap.steps())));
        }
        return new SweepWord(frames, faults);
    }

    private static void end(List<Fault> faults, String kind, String which, double open) {
        if (open > OPEN) {
            faults.add(new Fault(
                    kind,
                    String.format(
                            Locale.ROOT,
                            "the %s end is open: %.0f %% of the subject is still getting sharper %s",
                            which,
                            100 * open,
                            which.equals("first") ? "towards the first frame" : "at the last frame")));
        }
    }

    String json() {
        ObjectNode json = JsonMapper.builder().build().createObjectNode();
        json.put("whole", faults.isEmpty()).put("frames", frames).put("by", "intake");
        ArrayNode all = json.putArray("faults");
        faults.forEach(fault -> all.addObject().put("kind", fault.kind()).put("sentence", fault.sentence()));
        return json.toString();
    }
}
