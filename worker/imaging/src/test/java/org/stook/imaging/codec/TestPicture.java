package org.stook.imaging.codec;

import java.util.Random;
import org.stook.imaging.frame.Samples;

/** Small pictures to write and read: slopes, an edge and a little noise, the same every time. */
final class TestPicture {
    private TestPicture() {}

    static Samples.Eight eight(int width, int height, int channels) {
        byte[] codes = new byte[width * height * channels];
        Random noise = new Random(7);
        for (int i = 0; i < codes.length; i++) codes[i] = (byte) level(i, width, channels, 255, noise);
        return new Samples.Eight(width, height, channels, codes);
    }

    static Samples.Sixteen sixteen(int width, int height, int channels) {
        short[] codes = new short[width * height * channels];
        Random noise = new Random(7);
        for (int i = 0; i < codes.length; i++) codes[i] = (short) level(i, width, channels, 65535, noise);
        return new Samples.Sixteen(width, height, channels, codes);
    }

    private static int level(int i, int width, int channels, int max, Random noise) {
        int x = i / channels % width;
        int y = i / channels / width;
        double slope = 0.2 + 0.5 * x / width + 0.1 * (i % channels) + (y > 20 ? 0.15 : 0);
        return (int) Math.max(0, Math.min(max, max * (slope + 0.01 * noise.nextGaussian())));
    }

    static int[] codes(Samples samples) {
        int[] all = new int[samples.width() * samples.height() * samples.channels()];
        int[] row = new int[samples.width() * samples.channels()];
        for (int y = 0; y < samples.height(); y++) {
            samples.row(y, row);
            System.arraycopy(row, 0, all, y * row.length, row.length);
        }
        return all;
    }

    static double meanDifference(Samples one, Samples two) {
        int[] a = codes(one);
        int[] b = codes(two);
        long sum = 0;
        for (int i = 0; i < a.length; i++) sum += Math.abs(a[i] - b[i]);
        return (double) sum / a.length;
    }
}
