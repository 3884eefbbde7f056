package org.stook.imaging.codec;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Where the strips or tiles of a TIFF lie (TIFF 6.0, sections 3 and 15): each checked to lie inside the file and to be
 * long enough for its pixels. Nothing picture-sized is allocated. One use.
 */
final class TiffSegments {
    private static final int STRIP_OFFSETS = 273;
    private static final int ROWS_PER_STRIP = 278;
    private static final int STRIP_BYTE_COUNTS = 279;
    private static final int TILE_WIDTH = 322;
    private static final int TILE_LENGTH = 323;
    private static final int TILE_OFFSETS = 324;
    private static final int TILE_BYTE_COUNTS = 325;

    /** Uncompressed strips are read in bands of about this many bytes. */
    private static final int BAND = 1 << 20;

    /** A tile may be larger than a small picture, but not by much. */
    private static final int SPARE_TILE = 4096;

    private static final long ONE_PIECE = Integer.MAX_VALUE - 16;

    /**
     * A strip or tile, or a band of an uncompressed one.
     *
     * @param plane the channel, where each channel is stored by itself; else 0
     * @param rows rows that are stored, the padding of a bottom tile included
     * @param offset in the file
     * @param packed bytes in the file
     */
    record Segment(int plane, int x, int y, int columns, int rows, long offset, int packed) {}

    private final TiffDirectory directory;
    private final TiffLayout layout;
    private final List<Segment> segments = new ArrayList<>();
    private long used;

    TiffSegments(TiffDirectory directory, TiffLayout layout) {
        this.directory = directory;
        this.layout = layout;
    }

    List<Segment> all() throws UnreadableFrame, IOException {
        boolean tiled = directory.has(TILE_OFFSETS);
        long columns = tiled ? layout.required(TILE_WIDTH, "its tile width") : layout.width;
        long rows = tiled
                ? layout.required(TILE_LENGTH, "its tile height")
                : Math.min(layout.height, directory.number(ROWS_PER_STRIP, layout.height));
        checkSize(columns, rows);
        int across = (int) ((layout.width + columns - 1) / columns);
        int down = (int) ((layout.height + rows - 1) / rows);
        long count = (long) across * down * (layout.planar ? layout.samplesPerPixel : 1);
        long[] offsets = table(tiled ? TILE_OFFSETS : STRIP_OFFSETS, count);
        long[] sizes = table(tiled ? TILE_BYTE_COUNTS : STRIP_BYTE_COUNTS, count);
        for (int i = 0; i < count && i / (across * down) < layout.channels(); i++) {
            int x = (int) (i % across * columns);
            int y = (int) (i / across % down * rows);
            int stored = (int) (tiled ? rows : Math.min(rows, layout.height - y));
            add(new Segment(i / (across * down), x, y, (int) columns, stored, offsets[i], 0), sizes[i]);
        }
        return segments;
    }

    private void checkSize(long columns, long rows) throws UnreadableFrame {
        boolean empty = columns < 1 || rows < 1;
        boolean huge =
                columns > Math.max(SPARE_TILE, 2L * layout.width) || rows > Math.max(SPARE_TILE, 2L * layout.height);
        if (empty || huge) {
            throw directory.damaged("tiles or strips of %d x %d".formatted(columns, rows), "a size near the picture's");
        }
    }

    private long[] table(int tag, long count) throws UnreadableFrame, IOException {
        if (directory.count(tag) < count) {
            throw directory.damaged(
                    "%d entries in field %d".formatted(directory.count(tag), tag), count + " strips or tiles");
        }
        return directory.numbers(tag, count);
    }

    private void add(Segment s, long packed) throws UnreadableFrame {
        boolean bare = layout.compression == TiffCompression.NONE;
        long rowBytes = (long) s.columns * layout.samplesPerPixelInSegment() * layout.bytesPerSample();
        long needed = rowBytes * s.rows;
        if ((bare ? rowBytes : Math.max(needed, packed)) > ONE_PIECE) {
            throw directory.unsupported("a strip of %d bytes".formatted(needed), "less than 2 GiB in one piece");
        }
        if (packed * layout.compression.mostExpansion() < needed) {
            throw directory.damaged(
                    "%d bytes for a strip or tile of %d x %d".formatted(packed, s.columns, s.rows),
                    "enough data for %d bytes".formatted(needed));
        }
        // A last strip may declare padding that was never written; what counts is that its pixels are there.
        claim(s.offset, bare ? needed : packed);
        if (bare) addBands(s, rowBytes);
        else segments.add(new Segment(s.plane, s.x, s.y, s.columns, s.rows, s.offset, (int) packed));
    }

    private void claim(long offset, long bytes) throws UnreadableFrame {
        if (offset + bytes > directory.fileLength()) throw directory.incomplete(offset + bytes);
        used += bytes;
        if (used > directory.fileLength()) {
            throw directory.damaged("strips or tiles that share their bytes", "each to have its own");
        }
    }

    private void addBands(Segment s, long rowBytes) {
        int band = (int) Math.max(1, BAND / rowBytes);
        for (int y = 0; y < s.rows; y += band) {
            int rows = Math.min(band, s.rows - y);
            long offset = s.offset + y * rowBytes;
            segments.add(new Segment(s.plane, s.x, s.y + y, s.columns, rows, offset, (int) (rows * rowBytes)));
        }
    }
}
