package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * What the frames of one stack tell together. Frames are named by their index in capture order.
 *
 * @param order the frames of the sweep in focus order, strays left out; runs the same way as the capture did
 * @param positions for each entry of {@code order} its place on the focus axis, in usual steps, rising from 0
 * @param confidence in that order, 0 to 1: how surely the least sure neighbours stand the right way round
 * @param misplaced frames that were captured (or handed in) at another place than the order gives them
 * @param shaken frames that are less sharp than their place in the sweep promises: camera or subject moved while exposing
 * @param strays frames set aside, by index
 */
public record SweepSurvey(
        int[] order,
        double[] positions,
        double confidence,
        List<Integer> misplaced,
        List<Integer> shaken,
        List<Stray> strays,
        Coverage coverage) {
    public SweepSurvey {
        misplaced = List.copyOf(misplaced);
        shaken = List.copyOf(shaken);
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
        int[] kept = IntStream.range(0, frames.size())
                .filter(f -> strays.stream().noneMatch(s -> s.frame() == f))
                .toArray();
        FocusAxis all = FocusAxis.of(frames, kept);
        List<Stray> twins = Twins.find(frames, all);
        strays.addAll(twins);
        strays.sort(Comparator.comparingInt(Stray::frame));
        FocusAxis axis =
                all.without(twins.stream().mapToInt(Stray::frame).boxed().toList());
        return new SweepSurvey(
                axis.frames(),
                axis.positions(),
                axis.confidence(),
                Seriation.misplaced(axis.frames()),
                axis.soft(),
                strays,
                CoverageSurvey.of(frames, axis));
    }
}
