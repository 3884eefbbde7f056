package org.stook.imaging.tone;

import org.stook.imaging.frame.Samples;

/**
 * Every so many pixels of a frame: enough to know its light by tiles, and small enough to be kept for every frame of a
 * sweep. Code values as they stand in the file; means of neighbours would not do, for means of codes are not means of
 * light.
 *
 * @param picked the pixels, row by row
 * @param stepX distance of picked columns, pixels of the frame
 * @param stepY distance of picked rows
 * @param width of the frame, pixels
 * @param height of the frame
 */
public record LightGrid(Samples picked, int stepX, int stepY, int width, int height) {
    /** So many rows and columns are enough for means far steadier than what they are compared for. */
    private static final int ENOUGH = 400;

    public static LightGrid of(Samples samples) {
        int stepX = Math.max(1, samples.width() / ENOUGH);
        int stepY = Math.max(1, samples.height() / ENOUGH);
        int columns = (samples.width() + stepX - 1) / stepX;
        int rows = (samples.height() + stepY - 1) / stepY;
        int channels = samples.channels();
        int[] codes = new int[columns * rows * channels];
        for (int y = 0, at = 0; y < rows; y++) {
            for (int x = 0; x < columns; x++) {
                for (int c = 0; c < channels; c++) codes[at++] = samples.code(x * stepX, y * stepY, c);
            }
        }
        Samples picked = pack(samples, columns, rows, codes);
        return new LightGrid(picked, stepX, stepY, samples.width(), samples.height());
    }

    private static Samples pack(Samples like, int columns, int rows, int[] codes) {
        if (like.bitsPerSample() == 8) {
            byte[] packed = new byte[codes.length];
            for (int i = 0; i < codes.length; i++) packed[i] = (byte) codes[i];
            return new Samples.Eight(columns, rows, like.channels(), packed);
        }
        short[] packed = new short[codes.length];
        for (int i = 0; i < codes.length; i++) packed[i] = (short) codes[i];
        return new Samples.Sixteen(columns, rows, like.channels(), packed);
    }
}
