package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/** Finds where each tile is sharpest and what the sweep leaves out. */
final class CoverageSurvey {
    private static final double TEXTURED = 4;
    /** A tile whose sharpness varies less than this factor has no peak to speak of. */
    private static final double PEAKED = 1.3;
    /** Still rising at the end: by more than this factor per step. */
    private static final double RISING = 1.1;
    /** A step this many times the usual one is a gap. */
    private static final double WIDE = 1.8;

    private CoverageSurvey() {}

    static Coverage of(List<FrameSurvey> frames, int[] order, double[] steps) {
        FrameSurvey first = frames.get(order[0]);
        double[] peaks = new double[first.tiles()];
        int peaked = 0;
        int openFirst = 0;
        int openLast = 0;
        int last = order.length - 1;
        for (int t = 0; t < peaks.length; t++) {
            double[] curve = curve(frames, order, t);
            peaks[t] = peak(curve, floor(first));
            if (Double.isNaN(peaks[t])) continue;
            peaked++;
            if (last > 0 && peaks[t] == 0 && curve[0] > RISING * curve[1]) openFirst++;
            if (last > 0 && peaks[t] == last && curve[last] > RISING * curve[last - 1]) openLast++;
        }
        double all = Math.max(1, peaked);
        return new Coverage(first.tilesX(), first.tilesY(), peaks, openFirst / all, openLast / all, gaps(order, steps));
    }

    private static double[] curve(List<FrameSurvey> frames, int[] order, int tile) {
        return Arrays.stream(order)
                .mapToDouble(f -> frames.get(f).sharpness(tile))
                .toArray();
    }

    private static double floor(FrameSurvey frame) {
        double sum = 0;
        for (int k = 0; k < frame.floors().length; k++) sum += frame.floors()[k] / (1 << k);
        return sum;
    }

    /** Top of the parabola through the logarithms around the maximum; the frame itself at either end. */
    private static double peak(double[] curve, double floor) {
        int best = 0;
        double least = Double.POSITIVE_INFINITY;
        for (int i = 0; i < curve.length; i++) {
            if (curve[i] > curve[best]) best = i;
            least = Math.min(least, curve[i]);
        }
        if (curve[best] < TEXTURED * floor) return Double.NaN;
        if (curve.length > 1 && curve[best] < PEAKED * least) return Double.NaN;
        if (best == 0 || best == curve.length - 1) return best;
        double a = Math.log(curve[best - 1] + floor);
        double b = Math.log(curve[best] + floor);
        double c = Math.log(curve[best + 1] + floor);
        double bend = a - 2 * b + c;
        return bend < 0 ? best + 0.5 * (a - c) / bend : best;
    }

    private static List<Coverage.Gap> gaps(int[] order, double[] steps) {
        List<Coverage.Gap> gaps = new ArrayList<>();
        if (steps.length < 4) return gaps;
        double usual = Seriation.median(steps);
        for (int i = 0; i < steps.length; i++) {
            if (usual > 0 && steps[i] > WIDE * usual) {
                gaps.add(new Coverage.Gap(order[i], order[i + 1], steps[i] / usual));
            }
        }
        return gaps;
    }
}
