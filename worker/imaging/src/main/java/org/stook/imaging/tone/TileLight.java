package org.stook.imaging.tone;

import java.util.Arrays;
import org.stook.imaging.frame.Samples;

/**
 * Mean linear light of large tiles of a frame. Defocus spreads light but keeps its sum, so tile means of neighbouring
 * frames differ by exposure and little else; only the middle of the frame is looked at, since focusing moves its border.
 *
 * @param channels 1 or 3
 * @param means light 0 to 1, tile by tile row-major, channels interleaved
 * @param usable whether the tile is neither too dark nor clipped to say anything about exposure
 */
@SuppressWarnings("ArrayRecordComponent") // measurements, read by index, never compared
public record TileLight(int channels, double[] means, boolean[] usable) {
    private static final int ACROSS = 12;
    private static final int DOWN = 8;
    /** Share of each side that is looked at. */
    private static final double MIDDLE = 0.8;
    /** Enough rows for means far steadier than what they are compared for. */
    private static final int MOST_ROWS = 1024;

    private static final double DARKEST = 0.003;
    private static final double MOST_CLIPPED = 0.01;

    /** Measures a frame, whole or reduced, by the curves of its colour space. */
    public static TileLight measure(Samples samples, ColourSpace space) {
        return new Measurement(samples, space).measure();
    }

    /** Number of tiles. */
    public int tiles() {
        return usable.length;
    }

    double mean(int tile, int channel) {
        return means[tile * channels + channel];
    }

    private static final class Measurement {
        private final Samples samples;
        private final int channels;
        private final double[][] light;
        private final int across;
        private final int down;
        private final double[] sums;
        private final long[] clipped;
        private final long[] counts;

        Measurement(Samples samples, ColourSpace space) {
            this.samples = samples;
            this.channels = samples.channels();
            this.light = lightTables(samples, space);
            this.across = Math.min(ACROSS, samples.width());
            this.down = Math.min(DOWN, samples.height());
            this.sums = new double[across * down * channels];
            this.clipped = new long[across * down];
            this.counts = new long[across * down];
        }

        private static double[][] lightTables(Samples samples, ColourSpace space) {
            double[][] tables = new double[samples.channels()][];
            for (int c = 0; c < tables.length; c++) {
                boolean shared = c > 0 && space.curve(c).equals(space.curve(c - 1));
                tables[c] = shared ? tables[c - 1] : lightTable(samples.maxCode(), space.curve(c));
            }
            return tables;
        }

        private static double[] lightTable(int maxCode, TransferCurve curve) {
            double[] table = new double[maxCode + 1];
            for (int code = 0; code <= maxCode; code++) table[code] = curve.toLight(code / (double) maxCode);
            return table;
        }

        TileLight measure() {
            int top = edge(0, down, samples.height());
            int bottom = edge(down, down, samples.height());
            int step = Math.max(1, (bottom - top) / MOST_ROWS);
            int[] codes = new int[samples.width() * channels];
            for (int row = 0; row < down; row++) {
                int end = edge(row + 1, down, samples.height());
                for (int y = edge(row, down, samples.height()); y < end; y += step) {
                    samples.row(y, codes);
                    addRow(codes, row * across);
                }
            }
            return result();
        }

        /** Where tile {@code i} of {@code n} begins; the middle part only. */
        private static int edge(int i, int n, int extent) {
            return (int) Math.round(extent * ((1 - MIDDLE) / 2 + MIDDLE * i / n));
        }

        private void addRow(int[] codes, int firstTile) {
            int white = samples.maxCode();
            for (int column = 0; column < across; column++) {
                int tile = firstTile + column;
                int end = edge(column + 1, across, samples.width());
                for (int x = edge(column, across, samples.width()); x < end; x++) {
                    boolean over = false;
                    for (int c = 0; c < channels; c++) {
                        int code = codes[x * channels + c];
                        sums[tile * channels + c] += light[c][code];
                        over |= code == white;
                    }
                    counts[tile]++;
                    if (over) clipped[tile]++;
                }
            }
        }

        private TileLight result() {
            boolean[] usable = new boolean[counts.length];
            for (int tile = 0; tile < usable.length; tile++) {
                double darkest = 1;
                for (int c = 0; c < channels; c++) {
                    sums[tile * channels + c] /= Math.max(1, counts[tile]);
                    darkest = Math.min(darkest, sums[tile * channels + c]);
                }
                usable[tile] = darkest >= DARKEST && clipped[tile] <= MOST_CLIPPED * counts[tile];
            }
            return new TileLight(channels, sums, usable);
        }
    }

    @Override
    public String toString() {
        return "TileLight" + Arrays.toString(means);
    }
}
