package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.List;

/** Says what a sweep covers and what it leaves out. */
final class CoverageSurvey {
    /** A tile so far outside the sweep, in steps, was not reached. */
    private static final double OUTSIDE = 0.5;
    /** A step surely this many times the usual one is a gap. */
    private static final double WIDE = 1.8;

    private CoverageSurvey() {}

    static Coverage of(List<FrameSurvey> frames, FocusAxis axis) {
        FrameSurvey first = frames.get(axis.frames()[0]);
        double[] places = axis.tiles();
        double[] peaks = new double[places.length];
        double last = axis.positions()[axis.positions().length - 1];
        int known = 0;
        int before = 0;
        int after = 0;
        for (int t = 0; t < places.length; t++) {
            peaks[t] = Double.isNaN(places[t]) ? Double.NaN : axis.rank(places[t]);
            if (Double.isNaN(places[t])) continue;
            known++;
            if (places[t] < -OUTSIDE) before++;
            if (places[t] > last + OUTSIDE) after++;
        }
        double all = Math.max(1, known);
        return new Coverage(first.tilesX(), first.tilesY(), peaks, before / all, after / all, gaps(axis));
    }

    private static List<Coverage.Gap> gaps(FocusAxis axis) {
        List<Coverage.Gap> gaps = new ArrayList<>();
        for (int i = 0; i + 1 < axis.frames().length; i++) {
            double step = axis.positions()[i + 1] - axis.positions()[i];
            double sigma = Math.hypot(axis.deviations()[i], axis.deviations()[i + 1]);
            if (step - sigma > WIDE) gaps.add(new Coverage.Gap(axis.frames()[i], axis.frames()[i + 1], step));
        }
        return gaps;
    }
}
