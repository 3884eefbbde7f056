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

    /** Fills {@code codes} with the {@code width * channels} interleaved code values of row {@code y}. */
    void row(int y, int[] codes);

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
        public void row(int y, int[] row) {
            int length = width * channels;
            int start = y * length;
            for (int i = 0; i < length; i++) row[i] = codes[start + i] & 0xFF;
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
        public void row(int y, int[] row) {
            int length = width * channels;
            int start = y * length;
            for (int i = 0; i < length; i++) row[i] = codes[start + i] & 0xFFFF;
        }
    }
}
