package org.stook.comparison.metrics;

import java.util.Arrays;
import java.util.List;
import java.util.stream.IntStream;

/**
 * The tiles of a stack in which some frame is in focus, and how sharp the sharpest one is there. A tile is judged if its sharpest
 * frame shows more than noise would and stands clearly above the stack: where all frames are alike either none is in focus or
 * it does not matter which is taken.
 *
 * @param tiles indices of the judged tiles
 * @param best the greatest contrast of any frame in each of them
 */
public record FocusedTiles(int[] tiles, double[] best) {
    /** Least sharpness of the sharpest frame: three 8-bit codes, about six times what a noise of 1.3 codes gives. */
    private static final double TEXTURED = 3.0 / 255;

    /** Least ratio of the sharpest frame to the middle one of all. */
    private static final double PEAK = 1.5;

    /** @param frames of one geometry, as they were taken */
    public static FocusedTiles of(List<TileSharpness> frames) {
        int[] tiles = IntStream.range(0, frames.get(0).values().length)
                .filter(t -> isFocused(frames, t))
                .toArray();
        return new FocusedTiles(tiles, best(frames, tiles));
    }

    /** The same tiles with the sharpest of other frames as the mark, such as the same ones resampled in another way. */
    public FocusedTiles withBestOf(List<TileSharpness> frames) {
        return new FocusedTiles(tiles, best(frames, tiles));
    }

    /** Contrast of an image in parts of the sharpest frame's, one ratio a judged tile. */
    public Ratios of(TileSharpness image) {
        return new Ratios(IntStream.range(0, tiles.length)
                .mapToDouble(i -> image.contrast(tiles[i]) / best[i])
                .sorted()
                .toArray());
    }

    /** How these marks lie to those of the same tiles in other frames. */
    public Ratios over(FocusedTiles others) {
        return new Ratios(IntStream.range(0, tiles.length)
                .mapToDouble(i -> best[i] / others.best[i])
                .sorted()
                .toArray());
    }

    private static boolean isFocused(List<TileSharpness> frames, int tile) {
        double[] sorted =
                frames.stream().mapToDouble(f -> f.values()[tile]).sorted().toArray();
        double peak = sorted[sorted.length - 1];
        return peak >= TEXTURED && peak >= PEAK * sorted[sorted.length / 2];
    }

    private static double[] best(List<TileSharpness> frames, int[] tiles) {
        return Arrays.stream(tiles)
                .mapToDouble(t ->
                        frames.stream().mapToDouble(f -> f.contrast(t)).max().orElseThrow())
                .toArray();
    }

    /** @param sorted least first */
    public record Ratios(double[] sorted) {
        /** Share of the tiles, 0 to 1, that reach a ratio. */
        public double shareReaching(double ratio) {
            return Arrays.stream(sorted).filter(r -> r >= ratio).count() / (double) sorted.length;
        }

        /** The ratio that a share of the tiles reaches at least; 0.5 for the median. */
        public double reachedBy(double share) {
            if (sorted.length == 0) return Double.NaN;
            return sorted[(int) Math.min(sorted.length - 1.0, (1 - share) * sorted.length)];
        }
    }
}
