package org.stook.imaging.slate;

import org.stook.imaging.frame.Samples;

/** A picture in 8-bit encoded grey, row-major: all that a label needs. The array is handed over, not copied. */
@SuppressWarnings("ArrayRecordComponent") // the array is the point: no copy of a 24 MP picture
public record GreyPicture(int width, int height, byte[] levels) {
    private static final int LIGHTEST = 255;

    public GreyPicture {
        if (width <= 0 || height <= 0 || levels.length != Math.multiplyExact(width, height)) {
            throw new IllegalArgumentException(
                    "%d x %d pixels do not make %d levels".formatted(width, height, levels.length));
        }
    }

    /** (R + 2 G + B) / 4 of the encoded values, in 8 bit. */
    public static GreyPicture of(Samples samples) {
        int width = samples.width();
        int channels = samples.channels();
        int shift = samples.bitsPerSample() - 8;
        byte[] levels = new byte[width * samples.height()];
        int[] row = new int[width * channels];
        for (int y = 0; y < samples.height(); y++) {
            samples.row(y, row);
            int start = y * width;
            for (int x = 0; x < width; x++) {
                int i = x * channels;
                int grey = channels == 1 ? row[i] : (row[i] + 2 * row[i + 1] + row[i + 2]) / 4;
                levels[start + x] = (byte) (grey >> shift);
            }
        }
        return new GreyPicture(width, samples.height(), levels);
    }

    /** 0 to 255. */
    public int at(int x, int y) {
        return levels[y * width + x] & 0xFF;
    }

    /** Means of n x n pixels; a last column or row that does not fill a cell is left out. */
    GreyPicture reduced(int n) {
        if (n == 1) return this;
        int w = width / n;
        int h = height / n;
        byte[] small = new byte[w * h];
        int[] sums = new int[w];
        for (int y = 0; y < h; y++) {
            java.util.Arrays.fill(sums, n * n / 2);
            for (int j = 0; j < n; j++) {
                int at = (y * n + j) * width;
                for (int x = 0; x < w; x++) for (int i = 0; i < n; i++) sums[x] += levels[at++] & 0xFF;
            }
            for (int x = 0; x < w; x++) small[y * w + x] = (byte) (sums[x] / (n * n));
        }
        return new GreyPicture(w, h, small);
    }

    /** Turned by a quarter. */
    GreyPicture turned() {
        byte[] out = new byte[levels.length];
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) out[(width - 1 - x) * height + y] = levels[y * width + x];
        }
        return new GreyPicture(height, width, out);
    }

    /** Rows {@code from} (inclusive) to {@code to} (exclusive). */
    GreyPicture rows(int from, int to) {
        return new GreyPicture(width, to - from, java.util.Arrays.copyOfRange(levels, from * width, to * width));
    }

    /**
     * What lies under a box, upright, bilinear; white outside the picture.
     *
     * @param scale pixels of the result per pixel of this picture, at most 4
     */
    GreyPicture upright(OrientedBox box, double scale) {
        int w = Math.max(1, (int) Math.round(box.width() * scale));
        int h = Math.max(1, (int) Math.round(box.height() * scale));
        double cos = Math.cos(box.angle()) / scale;
        double sin = Math.sin(box.angle()) / scale;
        byte[] out = new byte[Math.multiplyExact(w, h)];
        for (int y = 0; y < h; y++) {
            double v = y - (h - 1) / 2.0;
            for (int x = 0; x < w; x++) {
                double u = x - (w - 1) / 2.0;
                out[y * w + x] = (byte) between(box.x() + u * cos - v * sin, box.y() + u * sin + v * cos);
            }
        }
        return new GreyPicture(w, h, out);
    }

    private int between(double x, double y) {
        int left = (int) Math.floor(x);
        int top = (int) Math.floor(y);
        if (left < 0 || top < 0 || left + 1 >= width || top + 1 >= height) return LIGHTEST;
        double a = x - left;
        double b = y - top;
        double upper = at(left, top) * (1 - a) + at(left + 1, top) * a;
        double lower = at(left, top + 1) * (1 - a) + at(left + 1, top + 1) * a;
        return (int) Math.round(upper * (1 - b) + lower * b);
    }
}
