package org.stook.imaging.codec;

import java.io.IOException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Where the pixels of a TIFF lie and how they are packed (TIFF 6.0, sections 3, 9 and 15), refused here if we do not
 * read the variant or if the file cannot hold what it declares. Nothing picture-sized is allocated.
 */
final class TiffLayout {
    private static final int IMAGE_WIDTH = 256;
    private static final int IMAGE_LENGTH = 257;
    private static final int BITS_PER_SAMPLE = 258;
    private static final int COMPRESSION = 259;
    private static final int PHOTOMETRIC = 262;
    private static final int FILL_ORDER = 266;
    private static final int STRIP_OFFSETS = 273;
    private static final int SAMPLES_PER_PIXEL = 277;
    private static final int ROWS_PER_STRIP = 278;
    private static final int STRIP_BYTE_COUNTS = 279;
    private static final int PLANAR = 284;
    private static final int PREDICTOR = 317;
    private static final int TILE_WIDTH = 322;
    private static final int TILE_LENGTH = 323;
    private static final int TILE_OFFSETS = 324;
    private static final int TILE_BYTE_COUNTS = 325;
    private static final int SAMPLE_FORMAT = 339;

    /** Uncompressed strips are read in bands of about this many bytes. */
    private static final int BAND = 1 << 20;

    private static final int MOST_SAMPLES_PER_PIXEL = 8;

    /** A tile may be larger than a small picture, but not by much. */
    private static final int SPARE_TILE = 4096;

    /**
     * A strip or tile.
     *
     * @param plane the channel, where each channel is stored by itself; else 0
     * @param rows rows that are stored, the padding of a bottom tile included
     */
    record Segment(int plane, int x, int y, int columns, int rows, long offset, int packed) {}

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
    private long used;

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

    private long required(int tag, String what) throws UnreadableFrame, IOException {
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

    /** All strips or tiles, each checked to lie inside the file and to be long enough for its pixels. */
    List<Segment> segments() throws UnreadableFrame, IOException {
        boolean tiled = directory.has(TILE_OFFSETS);
        long columns = tiled ? required(TILE_WIDTH, "its tile width") : width;
        long rows = tiled ? required(TILE_LENGTH, "its tile height") : directory.number(ROWS_PER_STRIP, height);
        if (!tiled) rows = Math.min(rows, height);
        if (columns < 1
                || rows < 1
                || columns > Math.max(SPARE_TILE, 2L * width)
                || rows > Math.max(SPARE_TILE, 2L * height)) {
            throw directory.damaged("tiles or strips of %d x %d".formatted(columns, rows), "a size near the picture's");
        }
        int across = (int) ((width + columns - 1) / columns);
        int down = (int) ((height + rows - 1) / rows);
        int planes = planar ? samplesPerPixel : 1;
        long count = (long) across * down * planes;
        long[] offsets = table(tiled ? TILE_OFFSETS : STRIP_OFFSETS, count);
        long[] sizes = table(tiled ? TILE_BYTE_COUNTS : STRIP_BYTE_COUNTS, count);
        List<Segment> segments = new ArrayList<>();
        used = 0;
        for (int i = 0; i < count; i++) {
            int y = (int) (i / across % down * rows);
            int stored = (int) (tiled ? rows : Math.min(rows, height - y));
            int plane = i / (across * down);
            if (plane >= channels()) break;
            add(
                    segments,
                    new Segment(plane, (int) (i % across * columns), y, (int) columns, stored, offsets[i], 0),
                    sizes[i]);
        }
        return segments;
    }

    private long[] table(int tag, long count) throws UnreadableFrame, IOException {
        if (directory.count(tag) < count) {
            throw directory.damaged(
                    "%d entries in field %d".formatted(directory.count(tag), tag), count + " strips or tiles");
        }
        return directory.numbers(tag, count);
    }

    private void add(List<Segment> segments, Segment s, long packed) throws UnreadableFrame {
        long rowBytes = (long) s.columns * samplesPerPixelInSegment() * bytesPerSample();
        long needed = rowBytes * s.rows;
        long inOnePiece = compression == TiffCompression.NONE ? rowBytes : needed;
        if (inOnePiece > Integer.MAX_VALUE - 16) {
            throw directory.unsupported("a strip of %d bytes".formatted(needed), "less than 2 GiB in one piece");
        }
        if (packed * compression.mostExpansion() < needed) {
            throw directory.damaged(
                    "%d bytes for a strip or tile of %d x %d".formatted(packed, s.columns, s.rows),
                    "enough data for %d bytes".formatted(needed));
        }
        // A last strip may declare padding that was never written; what counts is that its pixels are there.
        long stored = compression == TiffCompression.NONE ? needed : packed;
        if (s.offset + stored > directory.fileLength()) throw directory.incomplete(s.offset + stored);
        used += stored;
        if (used > directory.fileLength()) {
            throw directory.damaged("strips or tiles that share their bytes", "each to have its own");
        }
        if (compression != TiffCompression.NONE) {
            segments.add(new Segment(s.plane, s.x, s.y, s.columns, s.rows, s.offset, (int) packed));
            return;
        }
        int band = (int) Math.max(1, BAND / rowBytes);
        for (int y = 0; y < s.rows; y += band) {
            int rows = Math.min(band, s.rows - y);
            long offset = s.offset + y * rowBytes;
            segments.add(new Segment(s.plane, s.x, s.y + y, s.columns, rows, offset, (int) (rows * rowBytes)));
        }
    }
}
