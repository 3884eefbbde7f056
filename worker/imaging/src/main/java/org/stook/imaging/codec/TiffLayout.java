package org.stook.imaging.codec;

import java.io.IOException;
import java.util.Arrays;

/** What the pixels of a TIFF are and how they are packed (TIFF 6.0, section 3), refused here if we do not read the variant. */
final class TiffLayout {
    private static final int IMAGE_WIDTH = 256;
    private static final int IMAGE_LENGTH = 257;
    private static final int BITS_PER_SAMPLE = 258;
    private static final int COMPRESSION = 259;
    private static final int PHOTOMETRIC = 262;
    private static final int FILL_ORDER = 266;
    private static final int SAMPLES_PER_PIXEL = 277;
    private static final int PLANAR = 284;
    private static final int PREDICTOR = 317;
    private static final int SAMPLE_FORMAT = 339;

    private static final int MOST_SAMPLES_PER_PIXEL = 8;

    final int width;
    final int height;
    final int samplesPerPixel;
    final int bitsPerSample;
    final boolean whiteIsZero;
    final boolean planar;
    final boolean predicted;
    final TiffCompression compression;
    private final TiffDirectory directory;
    private final boolean colour;

    TiffLayout(TiffDirectory directory) throws UnreadableFrame, IOException {
        this.directory = directory;
        long declaredWidth = required(IMAGE_WIDTH, "its width");
        long declaredHeight = required(IMAGE_LENGTH, "its height");
        FileLimits.check(directory.file(), declaredWidth, declaredHeight, FileLimits.MOST_PIXELS);
        width = (int) declaredWidth;
        height = (int) declaredHeight;
        long photometric = required(PHOTOMETRIC, "its photometric interpretation");
        if (photometric > 2) throw directory.unsupported(photometricName(photometric), "grey or RGB");
        colour = photometric == 2;
        whiteIsZero = photometric == 0;
        samplesPerPixel = samplesPerPixel();
        bitsPerSample = bitsPerSample();
        planar = directory.number(PLANAR, 1) == 2 && samplesPerPixel > 1;
        compression = compression();
        predicted = predicted();
        if (directory.number(FILL_ORDER, 1) != 1) throw directory.unsupported("fill order 2", "fill order 1");
    }

    /** Channels that are kept: extra samples (alpha) are dropped. */
    int channels() {
        return colour ? 3 : 1;
    }

    int bytesPerSample() {
        return bitsPerSample / 8;
    }

    /** Samples that lie side by side in one segment. */
    int samplesPerPixelInSegment() {
        return planar ? 1 : samplesPerPixel;
    }

    long required(int tag, String what) throws UnreadableFrame, IOException {
        return directory
                .number(tag)
                .orElseThrow(() -> directory.damaged("a TIFF that does not say " + what, "field " + tag));
    }

    private static String photometricName(long photometric) {
        if (photometric == 3) return "a palette picture";
        if (photometric == 5) return "a CMYK picture";
        if (photometric == 6) return "a YCbCr picture";
        if (photometric == 32803 || photometric == 34892) return "camera raw data";
        return "photometric interpretation " + photometric;
    }

    private int samplesPerPixel() throws UnreadableFrame, IOException {
        long samples = directory.number(SAMPLES_PER_PIXEL, 1);
        if (samples < channels() || samples > MOST_SAMPLES_PER_PIXEL) {
            throw directory.damaged(
                    samples + " samples a pixel", "from %d to %d".formatted(channels(), MOST_SAMPLES_PER_PIXEL));
        }
        return (int) samples;
    }

    private int bitsPerSample() throws UnreadableFrame, IOException {
        long[] bits = directory.numbers(BITS_PER_SAMPLE, samplesPerPixel);
        if (bits.length == 0) bits = new long[] {1};
        long first = bits[0];
        if ((first != 8 && first != 16) || Arrays.stream(bits).anyMatch(b -> b != first)) {
            throw directory.unsupported("%s bits a sample".formatted(Arrays.toString(bits)), "8 or 16 throughout");
        }
        for (long format : directory.numbers(SAMPLE_FORMAT, samplesPerPixel)) {
            if (format != 1) throw directory.unsupported("sample format " + format, "unsigned integers (1)");
        }
        return (int) first;
    }

    private TiffCompression compression() throws UnreadableFrame, IOException {
        long code = directory.number(COMPRESSION, 1);
        return TiffCompression.of(code)
                .orElseThrow(() -> directory.unsupported(
                        "TIFF compression " + code, "none (1), LZW (5), Deflate (8) or PackBits (32773)"));
    }

    private boolean predicted() throws UnreadableFrame, IOException {
        long predictor = directory.number(PREDICTOR, 1);
        if (predictor > 2) throw directory.unsupported("predictor " + predictor, "1 or 2");
        boolean usesPredictor = compression == TiffCompression.LZW || compression == TiffCompression.DEFLATE;
        return predictor == 2 && usesPredictor;
    }
}
