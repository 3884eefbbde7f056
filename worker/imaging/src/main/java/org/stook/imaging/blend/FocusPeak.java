package org.stook.imaging.blend;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/**
 * Where in the sweep each pixel is sharpest: the greatest detail so far, its frame and the detail of the frames beside
 * it. Four planes, however long the sweep. Rows may be added from several threads, each row by one.
 */
final class FocusPeak {
    private static final int TABLE_BITS = 9;
    private static final float[] LOG2 = logarithms();

    private final int width;
    private final int height;
    private final float[] best;
    private float[] before;
    private float[] after;
    private float[] last;
    private final short[] frame;

    FocusPeak(int width, int height) {
        int n = width * height;
        this.width = width;
        this.height = height;
        this.best = new float[n];
        this.before = new float[n];
        this.after = new float[n];
        this.last = new float[n];
        this.frame = new short[n];
    }

    /** Learns row {@code y} of the detail of a frame; frames come in sweep order. */
    void add(int rank, int y, float[] detail) {
        int o = y * width;
        for (int x = 0; x < width; x++) {
            float now = Math.max(detail[x], Float.MIN_NORMAL);
            int i = o + x;
            if (rank == 0 || now > best[i]) {
                before[i] = last[i];
                best[i] = now;
                after[i] = 0;
                frame[i] = (short) rank;
            } else if ((frame[i] & 0xffff) == rank - 1) {
                after[i] = now;
            }
            last[i] = now;
        }
    }

    /** All frames have been added: finds the positions and lets go of what they are made of. */
    void settle(int frames, Rows rows) {
        rows.run(height, (from, to) -> {
            for (int i = from * width; i < to * width; i++) before[i] = position(i, frames);
        });
        after = new float[0];
        last = after;
    }

    /** The frame in which most of an area is sharpest; of several the first. */
    int commonest(Area area, int frames) {
        int[] counts = new int[frames];
        int winner = 0;
        for (int y = area.y(); y < area.y() + area.height(); y++) {
            for (int i = y * width + area.x(); i < y * width + area.x() + area.width(); i++) counts[frame(i)]++;
        }
        for (int rank = 1; rank < counts.length; rank++) if (counts[rank] > counts[winner]) winner = rank;
        return winner;
    }

    int width() {
        return width;
    }

    int height() {
        return height;
    }

    int frame(int i) {
        return frame[i] & 0xffff;
    }

    float best(int i) {
        return best[i];
    }

    /** The strongest detail of any frame; live. */
    Plane strongest() {
        return new Plane(width, height, best);
    }

    /** Sweep position of pixel {@code i}, once {@link #settle settled}. */
    float position(int i) {
        return before[i];
    }

    /**
     * Sweep position of pixel {@code i}, by a parabola through the logarithms of the three details around the peak: of a
     * peak shaped like a Gaussian that is the exact top (S. K. Nayar and Y. Nakagawa, "Shape from Focus", IEEE PAMI
     * 16(8), 1994). The detail must be positive.
     */
    private float position(int i, int frames) {
        int rank = frame(i);
        if (rank == 0 || rank == frames - 1) return rank;
        float low = log2(before[i]);
        float top = log2(best[i]);
        float high = log2(after[i]);
        float bend = 2 * top - low - high;
        return bend <= 0 ? rank : rank + Math.max(-0.5f, Math.min(0.5f, 0.5f * (high - low) / bend));
    }

    /** Logarithm of a positive normal number: its exponent, and a table of its mantissa with straight lines between. */
    private static float log2(float value) {
        int bits = Float.floatToRawIntBits(value);
        int mantissa = bits & 0x7fffff;
        int slot = mantissa >>> (23 - TABLE_BITS);
        float rest = (mantissa & ((1 << (23 - TABLE_BITS)) - 1)) * (1f / (1 << (23 - TABLE_BITS)));
        return (bits >>> 23) - 127 + LOG2[slot] + rest * (LOG2[slot + 1] - LOG2[slot]);
    }

    private static float[] logarithms() {
        float[] table = new float[(1 << TABLE_BITS) + 1];
        for (int i = 0; i < table.length; i++) {
            table[i] = (float) (StrictMath.log(1 + (double) i / (1 << TABLE_BITS)) / StrictMath.log(2));
        }
        return table;
    }

    /** Nearest-neighbour enlargement by {@code factor} to a full-size map of ranks. */
    short[] sourceMap(Plane full, int factor) {
        short[] map = new short[full.width() * full.height()];
        for (int y = 0; y < full.height(); y++) {
            int o = Math.min(y / factor, height - 1) * width;
            for (int x = 0; x < full.width(); x++) {
                map[y * full.width() + x] = frame[o + Math.min(x / factor, width - 1)];
            }
        }
        return map;
    }

    /** Nearest-neighbour enlargement of the positions; NaN where the best detail is below {@code least}. */
    Plane depthMap(Plane full, int factor, float least) {
        Plane small = new Plane(width, height);
        for (int i = 0; i < width * height; i++) {
            small.samples()[i] = best[i] < least ? Float.NaN : position(i);
        }
        for (int y = 0; y < full.height(); y++) {
            for (int x = 0; x < full.width(); x++) {
                full.set(x, y, small.at(Math.min(x / factor, width - 1), Math.min(y / factor, height - 1)));
            }
        }
        return full;
    }
}
