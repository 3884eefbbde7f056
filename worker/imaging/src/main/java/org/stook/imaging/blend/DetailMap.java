package org.stook.imaging.blend;

import java.util.function.Supplier;
import org.stook.imaging.frame.Plane;

/**
 * How much detail a frame shows where: energy of the finest Laplacian band of its luminance, smoothed by the 5 x 5 binomial
 * kernel as it is halved. Sample i lies at pixel 2 i.
 *
 * <p>It is taken from the frame as it was decoded. So it costs no decoding of its own, no resampling has touched it, and
 * no change of tones ever changes which frame is chosen where.
 */
public final class DetailMap {
    /** Full-size rows that are kept until all that is made of them is made. */
    private static final int KEPT = 8;
    /** Half-size rows that are kept: a row is enlarged from the half-size rows around it. */
    private static final int KEPT_HALVES = 4;

    private final SplitRow[] luma;
    private final float[][] half;
    private final SplitRow[] squares;
    private final SplitRow.Filter filter;
    private final float[] padded;
    private final float[] detail;
    /** Rows made so far: of the luminance at half size, of the squared band, and of the map. */
    private int halved;

    private int squared;
    private int made;

    private DetailMap(int width, int height) {
        int halfWidth = Binomial.half(width);
        this.luma = ring(new SplitRow[height], KEPT, () -> new SplitRow(width));
        this.half = ring(new float[Binomial.half(height)][], KEPT_HALVES, () -> new float[halfWidth + 2]);
        this.squares = ring(new SplitRow[height], KEPT, () -> new SplitRow(width));
        this.filter = new SplitRow.Filter(width);
        this.padded = new float[halfWidth + 2];
        this.detail = new float[halfWidth];
    }

    /** Names for more rows than there are: each is good until its place is needed again. */
    private static <T> T[] ring(T[] rows, int kept, Supplier<T> row) {
        for (int y = 0; y < rows.length; y++) rows[y] = y < kept ? row.get() : rows[y - kept];
        return rows;
    }

    /** Takes rows of a map, from above to below. */
    public interface Sink {
        /** @param detail only lent; the caller fills it anew */
        void row(int y, float[] detail);
    }

    /** Makes the map of a frame, half its size, rounded up. One thread; each row is read once, from above to below. */
    public static void of(int width, int height, LumaRows luma, Sink sink) {
        new DetailMap(width, height).make(luma, sink);
    }

    /** The map as a whole. */
    static Plane of(int width, int height, LumaRows luma) {
        Plane plane = new Plane(Binomial.half(width), Binomial.half(height));
        of(
                width,
                height,
                luma,
                (y, row) -> System.arraycopy(row, 0, plane.samples(), y * plane.width(), plane.width()));
        return plane;
    }

    private void make(LumaRows rows, Sink sink) {
        for (int y = 0; y < luma.length; y++) take(y, rows, sink);
    }

    /** Takes the next row, and makes whatever it is the last to be missing for. */
    private void take(int y, LumaRows rows, Sink sink) {
        luma[y].read(rows, y);
        for (; isReady(halved, y); halved++) filter.halve(luma, halved, half[halved]);
        // A row is enlarged from the half-size rows beside it and the one below.
        for (; squared <= y && (squared / 2 + 1 < halved || halved == half.length); squared++) {
            filter.squareBand(half, squared, luma[squared], squares[squared]);
            for (; isReady(made, squared); made++) {
                filter.halve(squares, made, padded);
                System.arraycopy(padded, 1, detail, 0, detail.length);
                sink.row(made, detail);
            }
        }
    }

    /** Whether a row of half size can be made once full-size row {@code y} is there. */
    private boolean isReady(int row, int y) {
        return row < half.length && Math.min(2 * row + 2, luma.length - 1) <= y;
    }
}
