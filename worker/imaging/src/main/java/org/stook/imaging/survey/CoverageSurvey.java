package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Says what a sweep covers and what it leaves out. */
final class CoverageSurvey {
    /**
     * A step surely this many times the usual one is a gap: at least one frame is missing. Light-field stacks, whose true
     * focus is known, and hand-turned ones show up to 1.75 without any being left out.
     */
    private static final double WIDE = 1.9;

    private CoverageSurvey() {}

    static Coverage of(List<FrameSurvey> frames, FocusAxis axis) {
        FrameSurvey first = frames.get(axis.frames()[0]);
        double[] places = axis.tiles();
        double last = axis.positions()[axis.positions().length - 1];
        double[] peaks = Arrays.stream(places)
                .map(z -> Double.isNaN(z) ? Double.NaN : axis.rank(z))
                .toArray();
        return new Coverage(
                first.tilesX(),
                first.tilesY(),
                peaks,
                OpenEnd.share(
                        outward(frames, axis.reversed()),
                        Arrays.stream(places).map(z -> -z).toArray()),
                OpenEnd.share(
                        outward(frames, axis),
                        Arrays.stream(places).map(z -> z - last).toArray()),
                axis.frames().length < FocusAxis.FEWEST ? List.of() : gaps(frames, axis));
    }

    private static List<FrameSurvey> outward(List<FrameSurvey> frames, FocusAxis axis) {
        return Arrays.stream(axis.frames()).mapToObj(frames::get).toList();
    }

    /**
     * Two measures must agree: the step on the axis, which adds up but which a wide gap compresses, as few tiles see both
     * sides of it; and what sharpness changes from frame to frame, which needs no model but levels off.
     */
    private static List<Coverage.Gap> gaps(List<FrameSurvey> frames, FocusAxis axis) {
        FocusDistances distances = FocusDistances.between(frames, axis.frames());
        List<Coverage.Gap> gaps = new ArrayList<>();
        double usual = distances.usualStep();
        int count = axis.frames().length - 1;
        if (usual <= 0 || count < 1) return gaps;
        double[] steps = new double[count];
        double[] changes = new double[count];
        double[] sure = new double[count];
        for (int i = 0; i < count; i++) {
            double sigma = Math.hypot(axis.deviations()[i], axis.deviations()[i + 1]);
            steps[i] = axis.positions()[i + 1] - axis.positions()[i];
            changes[i] = distances.at(i, i + 1);
            sure[i] = Math.max(0, steps[i] - sigma);
        }
        double[] beside = Evenness.besides(sure, steps, changes);
        double limit = Evenness.limit(beside);
        for (int i = 0; i < count; i++) {
            double wide = Math.sqrt(sure[i] * changes[i] / usual);
            if (wide > WIDE || beside[i] > limit) {
                gaps.add(new Coverage.Gap(axis.frames()[i], axis.frames()[i + 1], Math.max(wide, beside[i])));
            }
        }
        return gaps;
    }
}
