package org.stook.imaging.composite.rehearsal;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.stook.imaging.codec.JpegWriter;

/**
 * A focus bracket of nothing: a grainy surface that recedes from left to right, out of focus by a box filter, and a little larger
 * with each frame. Enough for every stage to find something to do, and drawn in a fraction of a second.
 *
 * @param width of the frames
 * @param height of the frames
 * @param frames how many
 */
record MadeUpStack(int width, int height, int frames) {
    /** By how much each frame is larger than the one before. */
    private static final double BREATHING = 0.001;
    /** How often a frame that is one step out of focus has been through the filter. */
    private static final int BLUR_A_STEP = 2;
    /** Beyond so many steps blur grows no more. */
    private static final int MOST_STEPS = 3;

    /** Sizes of grains, pixels. */
    private static final int[] GRAINS = {1, 2, 5, 13, 40};

    private static final float STRENGTH = 40;
    private static final float MIDDLE = 125;
    private static final double QUALITY = 0.9;
    /** Red, green and blue of the surface, parts of its lightness. */
    private static final double[] TINT = {1, 0.9, 0.7};

    /** @return the files, in sweep order */
    List<Path> write(Path folder) throws IOException {
        float[][] blurred = blurred();
        byte[] codes = new byte[width * height * TINT.length];
        List<Path> files = new ArrayList<>();
        for (int frame = 0; frame < frames; frame++) {
            draw(frame, blurred, codes);
            Path file = folder.resolve("frame-%02d.jpg".formatted(frame));
            try (OutputStream out = Files.newOutputStream(file)) {
                JpegWriter.write(codes, width, height, TINT.length, QUALITY, out);
            }
            files.add(file);
        }
        return files;
    }

    private void draw(int frame, float[][] blurred, byte[] codes) {
        double larger = 1 + BREATHING * (frame - frames / 2);
        for (int y = 0, i = 0; y < height; y++) {
            int fromY = shrunk(y, height, larger);
            for (int x = 0; x < width; x++) {
                int fromX = shrunk(x, width, larger);
                double sharpest = (double) fromX / width * (frames - 1);
                int steps = (int) Math.min(MOST_STEPS, Math.abs(sharpest - frame) + 0.5);
                float lightness = blurred[steps * BLUR_A_STEP][fromY * width + fromX];
                for (double tint : TINT) codes[i++] = (byte) (lightness * tint);
            }
        }
    }

    private static int shrunk(int at, int extent, double larger) {
        int from = (int) Math.round((at - extent / 2) / larger) + extent / 2;
        return Math.max(0, Math.min(extent - 1, from));
    }

    /** The surface, 0 to 255, and what each further filtering makes of it. */
    private float[][] blurred() {
        float[][] levels = new float[MOST_STEPS * BLUR_A_STEP + 1][];
        levels[0] = surface();
        for (int level = 1; level < levels.length; level++) levels[level] = filtered(levels[level - 1]);
        return levels;
    }

    /** Grains of several sizes, the larger ones the stronger. */
    private float[] surface() {
        float[] surface = new float[width * height];
        Arrays.fill(surface, MIDDLE);
        SplittableRandom random = new SplittableRandom(1);
        for (int size : GRAINS) {
            int across = width / size + 1;
            float[] grains = new float[across * (height / size + 1)];
            for (int i = 0; i < grains.length; i++) grains[i] = STRENGTH * (float) (random.nextDouble() - 0.5);
            for (int y = 0; y < height; y++) {
                for (int x = 0; x < width; x++) surface[y * width + x] += grains[y / size * across + x / size];
            }
        }
        return surface;
    }

    /** Means of 3 x 3 samples; the border stays as it is. */
    private float[] filtered(float[] in) {
        float[] out = Arrays.copyOf(in, in.length);
        for (int y = 1; y < height - 1; y++) {
            for (int x = 1; x < width - 1; x++) {
                float sum = 0;
                for (int row = y - 1; row <= y + 1; row++) {
                    for (int column = x - 1; column <= x + 1; column++) sum += in[row * width + column];
                }
                out[y * width + x] = sum / 9;
            }
        }
        return out;
    }
}
