package org.stook.imaging.frame;

/**
 * Decoded integer samples of one picture, exactly as its file holds them: unsigned code values of 8 or 16 bit,
 * interleaved, row-major, upright. Nothing has been toned yet. The array is handed over, not copied; whoever filled it
 * leaves it alone afterwards.
 */
public sealed interface Samples {
    int width();

    int height();

    /** 1 (grey) or 3 (red, green, blue). */
    int channels();

    /** 8 or 16. */
    int bitsPerSample();

    /** Code value of one sample, 0 to {@link #maxCode()}: grey, or red, green, blue. */
    int code(int x, int y, int channel);

    /** Fills {@code codes} with interleaved code values of row {@code y}, from column {@code from} on. */
    void row(int y, int from, int[] codes);

    /** Fills {@code codes} with the {@code width * channels} interleaved code values of row {@code y}. */
    default void row(int y, int[] codes) {
        row(y, 0, codes);
    }

    /** Fills {@code out} with {@link Luma luminance}, 0 to 1, of {@code count} pixels of row {@code y} from column {@code from} on. */
    void luma(int y, int from, int count, float[] out);

    /** Luminance of row {@code y} taken apart into its even and its odd columns: fills each line from its second sample on. */
    default void lumaApart(int y, float[] even, float[] odd) {
        float[] row = new float[width()];
        luma(y, 0, row.length, row);
        for (int x = 0; x < row.length; x++) (x % 2 == 0 ? even : odd)[x / 2 + 1] = row[x];
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
        public void luma(int y, int from, int count, float[] out) {
            int start = (y * width + from) * channels;
            if (channels == 1) {
                for (int x = 0; x < count; x++) out[x] = (codes[start + x] & 0xFF) * (1f / 255);
                return;
            }
            for (int x = 0, i = start; x < count; x++, i += 3) {
                out[x] = Luma.of(codes[i] & 0xFF, codes[i + 1] & 0xFF, codes[i + 2] & 0xFF) * (1f / 255);
            }
        }

        @Override
        public void row(int y, int from, int[] row) {
            int start = (y * width + from) * channels;
            for (int i = 0; i < row.length; i++) row[i] = codes[start + i] & 0xFF;
        }
    }

    /**
     * 8 bit luma, Cb and Cr of {@link LumaChroma}, as most JPEG have them. They become red, green and blue where those are
     * asked for: much of a frame is only ever looked at for its luminance. Two are equal only if they share their array.
     */
    @SuppressWarnings("ArrayRecordComponent") // as above
    record EightLumaChroma(int width, int height, byte[] codes) implements Samples {
        public EightLumaChroma {
            check(width, height, 3, codes.length);
        }

        @Override
        public int channels() {
            return 3;
        }

        @Override
        public int bitsPerSample() {
            return 8;
        }

        @Override
        public int code(int x, int y, int channel) {
            int i = (y * width + x) * 3;
            int luma = codes[i] & 0xFF;
            int cb = codes[i + 1] & 0xFF;
            int cr = codes[i + 2] & 0xFF;
            return switch (channel) {
                case 0 -> LumaChroma.red(luma, cr);
                case 1 -> LumaChroma.green(luma, cb, cr);
                default -> LumaChroma.blue(luma, cb);
            };
        }

        @Override
        public void luma(int y, int from, int count, float[] out) {
            int start = (y * width + from) * 3;
            for (int x = 0, i = start; x < count; x++, i += 3) out[x] = (codes[i] & 0xFF) * (1f / 255);
        }

        @Override
        public void lumaApart(int y, float[] even, float[] odd) {
            int start = y * width * 3;
            for (int x = 0; x < width / 2; x++) {
                even[x + 1] = (codes[start + 6 * x] & 0xFF) * (1f / 255);
                odd[x + 1] = (codes[start + 6 * x + 3] & 0xFF) * (1f / 255);
            }
            if (width % 2 == 1) even[width / 2 + 1] = (codes[start + 3 * (width - 1)] & 0xFF) * (1f / 255);
        }

        @Override
        public void row(int y, int from, int[] row) {
            for (int i = 0, at = (y * width + from) * 3; i < row.length; i += 3, at += 3) {
                int luma = codes[at] & 0xFF;
                int cb = codes[at + 1] & 0xFF;
                int cr = codes[at + 2] & 0xFF;
                row[i] = LumaChroma.red(luma, cr);
                row[i + 1] = LumaChroma.green(luma, cb, cr);
                row[i + 2] = LumaChroma.blue(luma, cb);
            }
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
        public void luma(int y, int from, int count, float[] out) {
            int start = (y * width + from) * channels;
            if (channels == 1) {
                for (int x = 0; x < count; x++) out[x] = (codes[start + x] & 0xFFFF) * (1f / 65535);
                return;
            }
            for (int x = 0, i = start; x < count; x++, i += 3) {
                out[x] = Luma.of(codes[i] & 0xFFFF, codes[i + 1] & 0xFFFF, codes[i + 2] & 0xFFFF) * (1f / 65535);
            }
        }

        @Override
        public void row(int y, int from, int[] row) {
            int start = (y * width + from) * channels;
            for (int i = 0; i < row.length; i++) row[i] = codes[start + i] & 0xFFFF;
        }
    }
}
