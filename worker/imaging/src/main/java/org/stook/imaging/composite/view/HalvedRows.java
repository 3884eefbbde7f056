package org.stook.imaging.composite.view;

/** Halves a picture of 8-bit sRGB codes: means of 2 x 2 pixels, taken in linear light (IEC 61966-2-1). */
final class HalvedRows {
    private static final int STEPS = 1 << 12;
    private static final float[] LIGHT = new float[256];
    /** By the square root of light, which the encoding follows closely. */
    private static final byte[] CODE = new byte[STEPS + 1];

    static {
        for (int code = 0; code < LIGHT.length; code++) {
            double v = code / 255.0;
            LIGHT[code] = (float) (v <= 0.04045 ? v / 12.92 : StrictMath.pow((v + 0.055) / 1.055, 2.4));
        }
        for (int i = 0; i <= STEPS; i++) {
            double light = (double) i / STEPS * i / STEPS;
            double v = light <= 0.0031308 ? 12.92 * light : 1.055 * StrictMath.pow(light, 1 / 2.4) - 0.055;
            CODE[i] = (byte) (int) (255 * v + 0.5);
        }
    }

    private HalvedRows() {}

    static int half(int extent) {
        return (extent + 1) / 2;
    }

    /**
     * Means of rows {@code y} and {@code y + 1} of {@code in}; a last column or row without a partner stands for itself.
     *
     * @param in interleaved codes, {@code rows} rows of {@code width} pixels
     * @param at where the row of {@code half(width)} pixels begins in {@code out}
     */
    static void row(byte[] in, int y, int rows, int width, int channels, byte[] out, int at) {
        int line = width * channels;
        int upper = y * line;
        int lower = Math.min(y + 1, rows - 1) * line;
        int half = half(width);
        for (int x = 0; x < half; x++) {
            int left = 2 * x * channels;
            int right = Math.min(2 * x + 1, width - 1) * channels;
            for (int c = 0; c < channels; c++) {
                float sum = LIGHT[in[upper + left + c] & 0xFF]
                        + LIGHT[in[upper + right + c] & 0xFF]
                        + LIGHT[in[lower + left + c] & 0xFF]
                        + LIGHT[in[lower + right + c] & 0xFF];
                out[at + x * channels + c] = CODE[(int) ((float) Math.sqrt(sum / 4) * STEPS + 0.5f)];
            }
        }
    }
}
