package org.stook.imaging.survey;

import java.util.ArrayDeque;
import java.util.Arrays;
import java.util.Deque;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Tells a sweep that ends inside its subject from one that has a backdrop behind it. In both cases there are tiles that
 * would be sharper beyond the last frame; those that look like the {@link Backdrop} along the border, or touch what does
 * (a silhouette holds some of it), are not the subject's. Where no backdrop shows, what hangs together with the border is
 * not, unless depth goes on evenly beyond the end ({@link DepthValley}).
 */
final class OpenEnd {
    /** A tile lies beyond an end that it is so many usual steps outside of. */
    private static final double BEYOND = 0.25;
    /** Such a tile is sharpest in the last frame or in its neighbour; one that holds two depths is sharpest elsewhere. */
    private static final int SHARPEST = 2;

    private final int across;
    private final boolean[] known;
    private final boolean[] beyond;
    private final boolean[] backdrop;

    private OpenEnd(int across, boolean[] known, boolean[] beyond, boolean[] backdrop) {
        this.across = across;
        this.known = known;
        this.beyond = beyond;
        this.backdrop = backdrop;
    }

    /**
     * Share of the subject's tiles that lie beyond the end of the sweep, 0 to 1.
     *
     * @param outward the frames in focus order, from within the sweep to the end that is judged
     * @param outside for each tile how far it lies outside the last frame, in usual steps, negative inside; NaN where unknown
     */
    static double share(List<FrameSurvey> outward, double[] outside) {
        int tiles = outside.length;
        boolean[] known = new boolean[tiles];
        boolean[] beyond = new boolean[tiles];
        for (int t = 0; t < tiles; t++) {
            known[t] = !Double.isNaN(outside[t]);
            beyond[t] = known[t] && outside[t] > BEYOND && isSharpestAtEnd(outward, t);
        }
        Backdrop behind = Backdrop.of(outward, t -> beyond[t]);
        int across = outward.get(0).tilesX();
        if (behind == null) {
            double enclosed = new OpenEnd(across, known, beyond, fromBorder(across, beyond)).share();
            return Math.max(enclosed, DepthValley.share(outside));
        }
        boolean[] backdrop = new boolean[tiles];
        for (int t = 0; t < tiles; t++) backdrop[t] = beyond[t] && behind.shows(t);
        return new OpenEnd(across, known, beyond, backdrop).share();
    }

    /** The tiles that hang together with the border of the picture by tiles beyond the end. */
    private static boolean[] fromBorder(int across, boolean[] beyond) {
        boolean[] reached = new boolean[beyond.length];
        Deque<Integer> open = new ArrayDeque<>();
        IntStream.range(0, beyond.length)
                .filter(t -> neighbours(across, beyond.length, t).length < 4)
                .forEach(open::add);
        while (!open.isEmpty()) {
            int t = open.remove();
            if (!beyond[t] || reached[t]) continue;
            reached[t] = true;
            for (int next : neighbours(across, beyond.length, t)) open.add(next);
        }
        return reached;
    }

    private double share() {
        long subject = IntStream.range(0, known.length)
                .filter(t -> known[t] && !backdrop[t])
                .count();
        long open = IntStream.range(0, known.length)
                .filter(t -> beyond[t] && !backdrop[t] && !touchesBackdrop(t))
                .count();
        return subject == 0 ? 0 : (double) open / subject;
    }

    private boolean touchesBackdrop(int t) {
        return Arrays.stream(neighbours(across, known.length, t)).anyMatch(next -> backdrop[next]);
    }

    /** The tiles to the left, right, above and below, as far as there are any. */
    private static int[] neighbours(int across, int tiles, int t) {
        return IntStream.of(
                        t % across > 0 ? t - 1 : -1,
                        t % across < across - 1 ? t + 1 : -1,
                        t - across,
                        t + across < tiles ? t + across : -1)
                .filter(next -> next >= 0)
                .toArray();
    }

    private static boolean isSharpestAtEnd(List<FrameSurvey> outward, int tile) {
        int best = 0;
        for (int f = 1; f < outward.size(); f++) {
            if (outward.get(f).sharpness(tile) > outward.get(best).sharpness(tile)) best = f;
        }
        return best >= outward.size() - SHARPEST;
    }
}
