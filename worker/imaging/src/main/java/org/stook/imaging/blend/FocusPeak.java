package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * Where in the sweep each pixel is sharpest: the greatest detail so far, its frame and the detail of the frames beside
 * it. Four planes, however long the sweep. Rows may be added from several threads, each row by one.
 */
final class FocusPeak {
    private final int width;
    private final int height;
    private final float[] best;
    private final float[] before;
    private final float[] after;
    private final float[] last;
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

    /**
     * Sweep position of pixel {@code i}, by a parabola through the logarithms of the three details around the peak: of a
     * peak shaped like a Gaussian that is the exact top (S. K. Nayar and Y. Nakagawa, "Shape from Focus", IEEE PAMI
     * 16(8), 1994). The detail must be positive.
     */
    float position(int i, int frames) {
        int rank = frame(i);
        if (rank == 0 || rank == frames - 1) return rank;
        double low = StrictMath.log(before[i]);
        double top = StrictMath.log(best[i]);
        double high = StrictMath.log(after[i]);
        double bend = 2 * top - low - high;
        return bend <= 0 ? rank : (float) (rank + Math.max(-0.5, Math.min(0.5, 0.5 * (high - low) / bend)));
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
    Plane depthMap(Plane full, int factor, int frames, float least) {
        Plane small = new Plane(width, height);
        for (int i = 0; i < width * height; i++) {
            small.samples()[i] = best[i] < least ? Float.NaN : position(i, frames);
        }
        for (int y = 0; y < full.height(); y++) {
            for (int x = 0; x < full.width(); x++) {
                full.set(x, y, small.at(Math.min(x / factor, width - 1), Math.min(y / factor, height - 1)));
            }
        }
        return full;
    }
}
