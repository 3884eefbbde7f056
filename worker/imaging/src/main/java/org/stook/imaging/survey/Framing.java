package org.stook.imaging.survey;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.survey.BorderDetail.Side;

/**
 * Whether the subject keeps clear of the frame's border over a sweep. Only what is sharpest inside the sweep counts: a backdrop is
 * sharpest behind its end. Where three sides or four are touched the picture is of a part of something larger, or the ground that
 * it stands on, and nothing is said.
 *
 * @param leaves sides at which the subject is in focus up to the border
 * @param tight sides at which it comes nearer to the border than the change of scale takes away
 * @param breathing largest scale of the sweep over the smallest, less 1
 */
public record Framing(Set<Side> leaves, Set<Side> tight, double breathing) {
    private static final int MOST_SIDES = 2;
    private static final int FEWEST_FRAMES = 4;
    /** Adjacent cells that make a touch. */
    private static final int CELLS = 2;
    /** Detail of the subject is at least this share of what its tiles usually show. */
    private static final double SUBJECT = 0.15;
    /** And so many times what is left at both ends of the sweep. */
    private static final double PEAK = 1.6;

    public Framing {
        leaves = Set.copyOf(leaves);
        tight = Set.copyOf(tight);
    }

    /**
     * @param frames as for {@link SweepSurvey#of}
     * @param borders of the same frames
     * @param sweep what was found of them
     */
    public static Framing of(List<FrameSurvey> frames, List<BorderDetail> borders, SweepSurvey sweep) {
        int[] order = sweep.order();
        if (order.length < FEWEST_FRAMES) return new Framing(Set.of(), Set.of(), 0);
        List<Plane> thumbnails =
                Arrays.stream(order).mapToObj(f -> frames.get(f).thumbnail()).toList();
        double breathing = Breathing.of(thumbnails);
        double least = SUBJECT * usual(frames, sweep);
        Map<Side, Integer> nearest = new EnumMap<>(Side.class);
        for (Side side : Side.values()) {
            IntStream.range(0, BorderDetail.STRIPS)
                    .filter(strip -> isTouched(borders, order, side, strip, least))
                    .findFirst()
                    .ifPresent(strip -> nearest.put(side, strip));
        }
        List<Side> leaves = new ArrayList<>();
        List<Side> tight = new ArrayList<>();
        nearest.forEach((side, strip) -> {
            if (strip == 0) leaves.add(side);
            else if ((strip + 0.5) * BorderDetail.STRIP < lost(thumbnails.get(0), side, breathing)) tight.add(side);
        });
        boolean part = leaves.size() + tight.size() > MOST_SIDES;
        return new Framing(part ? Set.of() : Set.copyOf(leaves), part ? Set.of() : Set.copyOf(tight), breathing);
    }

    /** What the change of scale takes from one side, as a share of the long side. */
    private static double lost(Plane picture, Side side, double breathing) {
        int across = side == Side.LEFT || side == Side.RIGHT ? picture.width() : picture.height();
        return 0.5 * breathing * across / Math.max(picture.width(), picture.height());
    }

    /** Energy of the finest octave that the subject's tiles have in focus, as a median. */
    private static double usual(List<FrameSurvey> frames, SweepSurvey sweep) {
        int[] order = sweep.order();
        double[] peaks = sweep.coverage().peaks();
        double[] energies = IntStream.range(0, peaks.length)
                .filter(t -> peaks[t] > 0 && peaks[t] < order.length - 1)
                .mapToDouble(t ->
                        frames.get(order[(int) Math.round(peaks[t])]).octaves().get(0)[t])
                .toArray();
        return energies.length == 0 ? Double.MAX_VALUE : Seriation.median(energies);
    }

    private static boolean isTouched(List<BorderDetail> borders, int[] order, Side side, int strip, double least) {
        int run = 0;
        for (int cell = 0; cell < BorderDetail.CELLS; cell++) {
            run = isInFocus(borders, order, side, strip, cell, least) ? run + 1 : 0;
            if (run >= CELLS) return true;
        }
        return false;
    }

    private static boolean isInFocus(
            List<BorderDetail> borders, int[] order, Side side, int strip, int cell, double least) {
        double most = 0;
        for (int i = 1; i < order.length - 1; i++)
            most = Math.max(most, borders.get(order[i]).at(side, strip, cell));
        double first = borders.get(order[0]).at(side, strip, cell);
        double last = borders.get(order[order.length - 1]).at(side, strip, cell);
        return most >= least && most > PEAK * Math.max(first, last);
    }
}
