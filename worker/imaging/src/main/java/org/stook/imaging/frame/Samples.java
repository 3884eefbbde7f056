package org.stook.imaging.frame;

/**
 * Decoded integer samples of one picture, exactly as its file holds them: unsigned code values of 8 or 16 bit,
 * interleaved (grey, or red green blue), row-major, upright. Nothing has been toned yet. The array is handed over, not
 * copied; whoever filled it leaves it alone afterwards.
 */
public sealed interface Samples {
    int width();

    int height();

    /** 1 (grey) or 3 (red, green, blue). */
    int channels();

    /** 8 or 16. */
    int bitsPerSample();

    /** Code value of one sample, 0 to {@link #maxCode()}. */
    int code(int x, int y, int channel);

    /** Fills {@code codes} with interleaved code values of row {@code y}, from column {@code from} on. */
    void row(int y, int from, int[] codes);

    /** Fills {@code codes} with the {@code width * channels} interleaved code values of row {@code y}. */
    default void row(int y, int[] codes) {
        row(y, 0, codes);
    }

    /** Fills {@code out} with luminance, 0 to 1, of row {@code y} from column {@code from} on: (R + 2 G + B) / 4, or grey. */
    void luma(int y, int from, float[] out);

    /** By what {@code R + 2 G + B}, or grey, is multiplied to lie in 0 to 1. */
    static float lumaScale(int maxCode, int channels) {
        return 1f / (maxCode * (channels == 1 ? 1 : 4));
    }

    /** The code value of white: 255 or 65535. */
    default int maxCode() {
        return (1 << bitsPerSample()) - 1;
    }

    private static void check(int width, int height, int channels, int given) {
        if (width <= 0 || height <= 0 || (channels != 1 && channels != 3)) {
            throw new IllegalArgumentException("samples are at least 1 x 1 with 1 or 3 channels, got %d x %d x %d"
                    .formatted(width, height, channels));
        }
        if (given != Math.multiplyExact(Math.multiplyExact(width, height), channels)) {
            throw new IllegalArgumentException(
                    "%d x %d pixels with %d channels do not make %d samples".formatted(width, height, channels, given));
        }
    }

    /** 8 bit samples. Two are equal only if they share their array. */
    @SuppressWarnings("ArrayRecordComponent") // the array is the point: no copy of a 60 MP picture
    record Eight(int width, int height, int channels, byte[] codes) implements Samples {
        public Eight {
            check(width, height, channels, codes.length);
        }

        @Override
        public int bitsPerSample() {
            return 8;
        }

        @Override
        public int code(int x, int y, int channel) {
            return codes[(y * width + x) * channels + channel] & 0xFF;
        }

        @Override
        public void luma(int y, int from, float[] out) {
            float scale = lumaScale(maxCode(), channels);
            int start = (y * width + from) * channels;
            if (channels == 1) {
                for (int x = 0; x < out.length; x++) out[x] = (codes[start + x] & 0xFF) * scale;
                return;
            }
            for (int x = 0, i = start; x < out.length; x++, i += 3) {
                out[x] = ((codes[i] & 0xFF) + 2 * (codes[i + 1] & 0xFF) + (codes[i + 2] & 0xFF)) * scale;
            }
        }

        @Override
        public void row(int y, int from, int[] row) {
            int start = (y * width + from) * channels;
            for (int i = 0; i < row.length; i++) row[i] = codes[start + i] & 0xFF;
        }
    }

    /** 16 bit samples. Two are equal only if they share their array. */
    @SuppressWarnings("ArrayRecordComponent") // as above
    record Sixteen(int width, int height, int channels, short[] codes) implements Samples {
        public Sixteen {
            check(width, height, channels, codes.length);
        }

        @Override
        public int bitsPerSample() {
            return 16;
        }

        @Override
        public int code(int x, int y, int channel) {
            return codes[(y * width + x) * channels + channel] & 0xFFFF;
        }

        @Override
        public void luma(int y, int from, float[] out) {
            float scale = lumaScale(maxCode(), channels);
            int start = (y * width + from) * channels;
            if (channels == 1) {
                for (int x = 0; x < out.length; x++) out[x] = (codes[start + x] & 0xFFFF) * scale;
                return;
            }
            for (int x = 0, i = start; x < out.length; x++, i += 3) {
                out[x] = ((codes[i] & 0xFFFF) + 2 * (codes[i + 1] & 0xFFFF) + (codes[i + 2] & 0xFFFF)) * scale;
            }
        }

        @Override
        public void row(int y, int from, int[] row) {
            int start = (y * width + from) * channels;
            for (int i = 0; i < row.length; i++) row[i] = codes[start + i] & 0xFFFF;
        }
    }
}
