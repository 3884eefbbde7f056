package org.stook.imaging.composite.view;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.codec.JpegWriter;
import org.stook.imaging.frame.Parallel;

/** One size of the picture: takes its rows from the top, writes its tiles and hands half-size rows on. */
final class TileLevel {
    private static final double QUALITY = 0.9;

    private final TilePlan plan;
    private final int scale;
    private final int width;
    private final int height;
    private final byte[] band;
    private final @Nullable TileLevel next;
    private int top;
    private int filled;

    /** @param scale by how much this size is smaller than the picture, a power of 2 */
    TileLevel(TilePlan plan, int scale) {
        this.plan = plan;
        this.scale = scale;
        this.width = plan.reduced(plan.width(), scale);
        this.height = plan.reduced(plan.height(), scale);
        this.band = new byte[Math.min(TilePlan.TILE, height) * width * plan.channels()];
        this.next = scale < plan.largestScale() ? new TileLevel(plan, 2 * scale) : null;
    }

    /** Takes the next rows. */
    void add(byte[] codes, int rows) {
        int line = width * plan.channels();
        for (int taken = 0; taken < rows; ) {
            int fits = Math.min(rows - taken, TilePlan.TILE - filled);
            System.arraycopy(codes, taken * line, band, filled * line, fits * line);
            filled += fits;
            taken += fits;
            if (filled == TilePlan.TILE || top + filled == height) flush();
        }
    }

    private void flush() {
        int columns = (width + TilePlan.TILE - 1) / TilePlan.TILE;
        Parallel.forEach(columns, plan.threads(), this::writeTile);
        if (next != null) {
            int channels = plan.channels();
            int rows = HalvedRows.half(filled);
            int narrow = HalvedRows.half(width) * channels;
            byte[] half = new byte[rows * narrow];
            int have = filled;
            Parallel.forEach(
                    rows, plan.threads(), y -> HalvedRows.row(band, 2 * y, have, width, channels, half, y * narrow));
            next.add(half, rows);
        }
        top += filled;
        filled = 0;
    }

    private void writeTile(int column) {
        int left = column * TilePlan.TILE;
        int across = Math.min(TilePlan.TILE, width - left);
        int channels = plan.channels();
        byte[] tile = new byte[across * filled * channels];
        for (int y = 0; y < filled; y++) {
            System.arraycopy(band, (y * width + left) * channels, tile, y * across * channels, across * channels);
        }
        try {
            write(plan.folder().resolve(region(left, across)), across, tile);
            if (next == null) write(plan.folder().resolve("full"), across, tile);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The part of the whole picture that a tile shows, "x,y,w,h". */
    private String region(int left, int across) {
        int x = left * scale;
        int y = top * scale;
        return String.format(
                Locale.ROOT,
                "%d,%d,%d,%d",
                x,
                y,
                Math.min(across * scale, plan.width() - x),
                Math.min(filled * scale, plan.height() - y));
    }

    private void write(Path region, int across, byte[] tile) throws IOException {
        Path folder = region.resolve(across + "," + filled).resolve("0");
        Files.createDirectories(folder);
        try (OutputStream out = new BufferedOutputStream(Files.newOutputStream(folder.resolve("default.jpg")))) {
            JpegWriter.write(tile, across, filled, plan.channels(), QUALITY, out);
        }
    }
}
