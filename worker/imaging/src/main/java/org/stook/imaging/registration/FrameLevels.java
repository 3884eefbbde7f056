package org.stook.imaging.registration;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Reduction;

/** One frame at all sizes that registration looks at, the finest first; linear light. */
record FrameLevels(int frame, List<Level> levels) {
    /** The finest level is the largest one whose long side does not exceed this. */
    private static final int FINEST_LONG_SIDE = 2400;

    private static final int COARSEST_LONG_SIDE = 300;
    private static final int BLANK_ACROSS = 16;

    static FrameLevels read(LumaSource source, int frame) throws IOException {
        int reduction = finestReduction(source);
        Plane plane = source.read(frame, reduction);
        linearise(plane);
        List<Level> levels = new ArrayList<>();
        Level level = Level.finest(plane, reduction);
        levels.add(level);
        while (Math.max(plane.width(), plane.height()) > COARSEST_LONG_SIDE) {
            plane = Reduction.half(plane);
            level = level.coarser(plane);
            levels.add(level);
        }
        return new FrameLevels(frame, List.copyOf(levels));
    }

    /** Whether there is nothing in the frame that could be found again: it is flat, or all noise. */
    boolean isBlank() {
        return levels.stream()
                .allMatch(level -> level.spots(BLANK_ACROSS, 0).stream()
                                .filter(s -> level.detailOverNoise(s.x(), s.y()) >= TileMatcher.LEAST_DETAIL)
                                .count()
                        < PairAligner.FEWEST);
    }

    static int finestReduction(LumaSource source) {
        int reduction = 1;
        while (reduction < 8 && Math.max(source.width(), source.height()) / reduction > FINEST_LONG_SIDE)
            reduction *= 2;
        return reduction;
    }

    /**
     * Defocus adds light, not encoded values: in encoded values every bright area would seem to grow as it goes out of
     * focus. A cubic through the sRGB curve (IEC 61966-2-1; within 0.003) is near enough for any of the usual encodings.
     */
    private static void linearise(Plane plane) {
        float[] s = plane.samples();
        for (int i = 0; i < plane.width() * plane.height(); i++) {
            float v = s[i];
            s[i] = v * (v * (v * 0.305306011f + 0.682171111f) + 0.012522878f);
        }
    }
}
