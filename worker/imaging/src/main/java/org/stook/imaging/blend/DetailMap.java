package org.stook.imaging.blend;

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

    private final float[][] luma;
    private final float[][] half;
    private final float[][] squares;
    private final float[] line;
    private final float[] narrow;
    private final float[] wide;

    private DetailMap(int width, int height) {
        this.luma = ring(height, KEPT, width);
        this.half = ring(Binomial.half(height), KEPT_HALVES, Binomial.half(width));
        this.squares = ring(height, KEPT, width);
        this.line = new float[width];
        this.narrow = new float[Binomial.half(width)];
        this.wide = new float[width + 1];
    }

    /** Names for more rows than there are: each is good until its place is needed again. */
    private static float[][] ring(int rows, int kept, int width) {
        float[][] ring = new float[rows][];
        for (int y = 0; y < rows; y++) ring[y] = y < kept ? new float[width] : ring[y - kept];
        return ring;
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
        int height = luma.length;
        float[] detail = new float[narrow.length];
        int halved = 0;
        int squared = 0;
        int made = 0;
        for (int y = 0; y < height; y++) {
            rows.read(y, luma[y]);
            for (; isReady(halved, y); halved++) Lines.halve(luma, halved, line, half[halved]);
            // A row is enlarged from the half-size rows beside it and the one below.
            for (; squared <= y && (squared / 2 + 1 < halved || halved == half.length); squared++) {
                square(squared);
                for (; isReady(made, squared); made++) {
                    Lines.halve(squares, made, line, detail);
                    sink.row(made, detail);
                }
            }
        }
    }

    /** Whether a row of half size can be made once full-size row {@code y} is there. */
    private boolean isReady(int row, int y) {
        return row < half.length && Math.min(2 * row + 2, luma.length - 1) <= y;
    }

    private void square(int y) {
        Lines.expand(half, y, narrow, wide);
        float[] in = luma[y];
        float[] out = squares[y];
        for (int x = 0; x < out.length; x++) {
            float d = in[x] - wide[x];
            out[x] = d * d;
        }
    }
}
