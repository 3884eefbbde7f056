package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What the frames of one stack tell together. Frames are named by their index in capture order.
 *
 * @param order the frames of the sweep in focus order, strays left out; runs the same way as the capture did
 * @param confidence in that order, 0 to 1: the share of neighbours whose exchange would clearly make a worse sweep
 * @param misplaced frames that were captured (or handed in) at another place than the order gives them
 * @param strays frames set aside, by index
 */
public record SweepSurvey(
        int[] order, double confidence, List<Integer> misplaced, List<Stray> strays, Coverage coverage) {
    public SweepSurvey {
        misplaced = List.copyOf(misplaced);
        strays = List.copyOf(strays);
    }

    /**
     * Surveys a stack of any size, one frame included.
     *
     * @param frames all surveyed at the same reduction, in capture order
     */
    public static SweepSurvey of(List<FrameSurvey> frames) {
        if (frames.isEmpty()) throw new IllegalArgumentException("a stack needs at least one frame");
        List<Stray> strays = new ArrayList<>(Misfits.find(frames));
        int[] kept = without(frames.size(), strays);
        FocusDistances distances = FocusDistances.between(frames, kept);
        int[] path = Seriation.order(distances);
        List<Stray> twins = Twins.find(distances, path);
        strays.addAll(twins);
        strays.sort(Comparator.comparingInt(Stray::frame));
        int[] ranks = java.util.Arrays.stream(path)
                .filter(i -> twins.stream().noneMatch(t -> t.frame() == kept[i]))
                .toArray();
        int[] order = java.util.Arrays.stream(ranks).map(i -> kept[i]).toArray();
        return new SweepSurvey(
                order,
                Seriation.confidence(distances, ranks),
                Seriation.misplaced(order),
                strays,
                CoverageSurvey.of(frames, order, Seriation.steps(distances, ranks)));
    }

    private static int[] without(int count, List<Stray> strays) {
        return java.util.stream.IntStream.range(0, count)
                .filter(f -> strays.stream().noneMatch(s -> s.frame() == f))
                .toArray();
    }
}
