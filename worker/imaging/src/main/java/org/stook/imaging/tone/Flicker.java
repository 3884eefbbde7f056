package org.stook.imaging.tone;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Differences of exposure between the frames of a sweep: uneven strobes, a shutter that varies, light that falls off as
 * the lens extends. Ratios of light between near neighbours (medians over tiles, so that no silhouette and no moving
 * reflection decides) are joined by least squares, so that errors do not add up along a long sweep.
 */
public final class Flicker {
    /** Frames further apart than this see too different parts of the subject sharp, and are scaled too differently. */
    private static final int FARTHEST = 3;

    private static final int FEWEST_TILES = 6;
    /** Weight of "no flicker" where two neighbours have nothing to say. */
    private static final double PRIOR = 1e-6;
    /** Smaller gains are measuring error; left at exactly 1 they keep the frame's code values untouched. */
    private static final double NEGLIGIBLE = 0.001;

    private Flicker() {}

    /**
     * Gain on light for each frame and channel that makes it as light as the reference frame.
     *
     * @param frames in sweep order, all with the same channels and tiles
     * @param reference index of the reference frame; its gains are 1
     * @return for each frame one gain a channel, for {@link Tone#prepare}
     */
    public static List<double[]> gains(List<TileLight> frames, int reference) {
        int n = frames.size();
        if (reference < 0 || reference >= n) {
            throw new IllegalArgumentException("reference frame %d of %d frames".formatted(reference, n));
        }
        int channels = frames.get(0).channels();
        for (TileLight frame : frames) {
            if (frame.channels() != channels || frame.tiles() != frames.get(0).tiles()) {
                throw new IllegalArgumentException("all frames need the same channels and tiles");
            }
        }
        List<double[]> gains = new ArrayList<>();
        for (int i = 0; i < n; i++) gains.add(new double[channels]);
        for (int c = 0; c < channels; c++) {
            double[] exposure = exposures(frames, c, reference);
            for (int i = 0; i < n; i++) gains.get(i)[c] = StrictMath.exp(-exposure[i]);
        }
        gains.forEach(Flicker::dropNegligible);
        return gains;
    }

    private static void dropNegligible(double[] gains) {
        if (Arrays.stream(gains).allMatch(gain -> Math.abs(gain - 1) < NEGLIGIBLE)) Arrays.fill(gains, 1);
    }

    /** Natural logarithm of each frame's light over the reference frame's. */
    private static double[] exposures(List<TileLight> frames, int channel, int reference) {
        int n = frames.size();
        double[][] normal = new double[n][n + 1];
        for (int i = 0; i < n; i++) {
            for (int j = i + 1; j < Math.min(n, i + 1 + FARTHEST); j++) {
                double[] ratios = logRatios(frames.get(i), frames.get(j), channel);
                if (ratios.length >= FEWEST_TILES) {
                    addPair(normal, i, j, median(ratios), 1.0 / (j - i));
                } else if (j == i + 1) {
                    addPair(normal, i, j, 0, PRIOR);
                }
            }
        }
        Arrays.fill(normal[reference], 0);
        normal[reference][reference] = 1;
        return solve(normal);
    }

    private static double[] logRatios(TileLight from, TileLight to, int channel) {
        double[] ratios = new double[from.tiles()];
        int n = 0;
        for (int tile = 0; tile < from.tiles(); tile++) {
            if (from.usable()[tile] && to.usable()[tile]) {
                ratios[n++] = StrictMath.log(to.mean(tile, channel) / from.mean(tile, channel));
            }
        }
        return Arrays.copyOf(ratios, n);
    }

    private static double median(double[] values) {
        Arrays.sort(values);
        int middle = values.length / 2;
        return values.length % 2 == 1 ? values[middle] : (values[middle - 1] + values[middle]) / 2;
    }

    /** One equation e_j - e_i = ratio, into the normal equations. */
    private static void addPair(double[][] normal, int i, int j, double ratio, double weight) {
        int right = normal.length;
        normal[i][i] += weight;
        normal[j][j] += weight;
        normal[i][j] -= weight;
        normal[j][i] -= weight;
        normal[i][right] -= weight * ratio;
        normal[j][right] += weight * ratio;
    }

    /** Gauss with partial pivoting; the last column is the right side. */
    private static double[] solve(double[][] rows) {
        int n = rows.length;
        for (int k = 0; k < n; k++) {
            int best = k;
            for (int i = k + 1; i < n; i++) if (Math.abs(rows[i][k]) > Math.abs(rows[best][k])) best = i;
            double[] swapped = rows[k];
            rows[k] = rows[best];
            rows[best] = swapped;
            for (int i = k + 1; i < n; i++) {
                double factor = rows[i][k] / rows[k][k];
                if (factor == 0) continue;
                for (int j = k; j <= n; j++) rows[i][j] -= factor * rows[k][j];
            }
        }
        double[] x = new double[n];
        for (int i = n - 1; i >= 0; i--) {
            double sum = rows[i][n];
            for (int j = i + 1; j < n; j++) sum -= rows[i][j] * x[j];
            x[i] = sum / rows[i][i];
        }
        return x;
    }
}
