package org.stook.imaging.codec;

import org.stook.imaging.frame.Samples;

/** Box averages of code values. */
final class BoxAverage {
    private BoxAverage() {}

    static Samples.Sixteen by(int n, Samples full) {
        int width = n < 1 ? 0 : full.width() / n;
        int height = n < 1 ? 0 : full.height() / n;
        if (width == 0 || height == 0) {
            throw new IllegalArgumentException(
                    "cannot reduce %d x %d pixels by %d".formatted(full.width(), full.height(), n));
        }
        int channels = full.channels();
        short[] out = new short[width * height * channels];
        int[] row = new int[full.width() * channels];
        long[] sums = new long[width * channels];
        long cell = (long) n * n;
        long scale = full.bitsPerSample() == 8 ? 257 : 1;
        for (int y = 0; y < height; y++) {
            java.util.Arrays.fill(sums, 0);
            for (int i = 0; i < n; i++) {
                full.row(y * n + i, row);
                addRow(row, sums, channels, n);
            }
            for (int i = 0; i < sums.length; i++) {
                out[y * sums.length + i] = (short) ((2 * scale * sums[i] + cell) / (2 * cell));
            }
        }
        return new Samples.Sixteen(width, height, channels, out);
    }

    private static void addRow(int[] row, long[] sums, int channels, int n) {
        for (int i = 0, cell = 0; cell < sums.length; cell += channels) {
            for (int x = 0; x < n; x++) {
                for (int c = 0; c < channels; c++) sums[cell + c] += row[i++];
            }
        }
    }
}
