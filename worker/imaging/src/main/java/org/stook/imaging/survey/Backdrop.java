package org.stook.imaging.survey;

import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Plane;

/**
 * What lies behind the subject (or stands before it), as the border of the picture shows it: a subject is framed wider than
 * needed, so that tiles at the border which lie beyond the end of the sweep show the backdrop. Its level, its sharpness in the
 * last frame and how that has risen change evenly across the picture; a part of the subject is unlike it.
 */
final class Backdrop {
    /** A backdrop shows along this share of the border at least. */
    private static final double SHOWS = 0.25;
    /** Root of the squared deviations over all features within which a tile is like the backdrop; its own tiles reach 7. */
    private static final double LIKE = 8;
    /** Frames from the last one to that which tells how sharpness has risen. */
    private static final int BACK = 2;

    private final List<double[]> features;
    private final List<SmoothTrend> trends;
    private final FrameSurvey grid;

    private Backdrop(List<double[]> features, List<SmoothTrend> trends, FrameSurvey grid) {
        this.features = features;
        this.trends = trends;
        this.grid = grid;
    }

    /**
     * Learns it from the border; null where none shows.
     *
     * @param outward the frames from within the sweep to its end
     * @param beyond which tiles lie beyond that end
     */
    static @Nullable Backdrop of(List<FrameSurvey> outward, IntPredicate beyond) {
        FrameSurvey last = outward.get(outward.size() - 1);
        FrameSurvey before = outward.get(Math.max(0, outward.size() - 1 - BACK));
        int[] border = IntStream.range(0, last.tiles())
                .filter(t -> isBorder(t, last) && beyond.test(t))
                .toArray();
        if (border.length < SHOWS * 2 * (last.tilesX() + last.tilesY() - 2)) return null;
        List<double[]> features = features(last, before);
        double[] x = IntStream.of(border).mapToDouble(t -> x(t, last)).toArray();
        double[] y = IntStream.of(border).mapToDouble(t -> y(t, last)).toArray();
        List<SmoothTrend> trends = features.stream()
                .map(f -> SmoothTrend.of(
                        x, y, IntStream.of(border).mapToDouble(t -> f[t]).toArray()))
                .toList();
        return new Backdrop(features, trends, last);
    }

    /** Whether a tile looks like the backdrop at its place. */
    boolean shows(int tile) {
        double sum = 0;
        double x = x(tile, grid);
        double y = y(tile, grid);
        for (int k = 0; k < trends.size(); k++) {
            double off = trends.get(k).deviation(x, y, features.get(k)[tile]);
            sum += off * off;
        }
        return sum <= LIKE * LIKE;
    }

    private static List<double[]> features(FrameSurvey last, FrameSurvey before) {
        int octaves = last.octaves().size();
        List<double[]> sharpness =
                IntStream.range(0, octaves).mapToObj(k -> logarithms(last, k)).toList();
        // The finest octave of a frame two steps off focus is noise.
        List<double[]> rises = IntStream.range(1, octaves)
                .mapToObj(k -> {
                    double[] earlier = logarithms(before, k);
                    return IntStream.range(0, earlier.length)
                            .mapToDouble(t -> sharpness.get(k)[t] - earlier[t])
                            .toArray();
                })
                .toList();
        return Stream.of(sharpness, rises, List.of(levels(last)))
                .flatMap(List::stream)
                .toList();
    }

    private static double[] logarithms(FrameSurvey frame, int octave) {
        float[] energy = frame.octaves().get(octave);
        float floor = frame.floors()[octave];
        return IntStream.range(0, energy.length)
                .mapToDouble(t -> Math.log(energy[t] + floor))
                .toArray();
    }

    private static double[] levels(FrameSurvey frame) {
        Plane small = frame.thumbnail();
        float[] means = new Tiles(frame.tilesX(), frame.tilesY()).means(small);
        return IntStream.range(0, means.length)
                .mapToDouble(t -> Math.log(Math.max(0, means[t]) + 0.02))
                .toArray();
    }

    private static boolean isBorder(int tile, FrameSurvey grid) {
        int tx = tile % grid.tilesX();
        int ty = tile / grid.tilesX();
        return tx == 0 || ty == 0 || tx == grid.tilesX() - 1 || ty == grid.tilesY() - 1;
    }

    private static double x(int tile, FrameSurvey grid) {
        return place(tile % grid.tilesX(), grid.tilesX());
    }

    private static double y(int tile, FrameSurvey grid) {
        return place(tile / grid.tilesX(), grid.tilesY());
    }

    private static double place(int tile, int tiles) {
        return (tile + 0.5) / tiles - 0.5;
    }
}
