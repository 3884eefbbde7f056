package org.stook.imaging.placing;

import java.util.Arrays;

/**
 * One pass of resampling: a line of the result is a mix of neighbouring lines of the source, by weights that change slowly
 * along it. So the line is cut into blocks within which the change is small and the lines mixed stay the same; there each
 * weight is a parabola through its values at both ends and in the middle. The loop then has no table in it, and the
 * compiler makes vector code of it. It does so only where all lines share one index; hence the line of positions within
 * blocks. The channels of a line stand one behind the other, so that a line without blocks is one loop. One thread.
 */
final class LineMix {
    /** Change of the fraction over a block; the error of weights taken as parabolas stays below 1e-4. */
    private static final double FRACTION = 1.0 / 8;

    /** Terms of a parabola. */
    private static final int TERMS = 3;
    /** Lines added in one loop; with more it is too long for the compiler to make vector code of. */
    private static final int AT_ONCE = 2;

    /** The two taps around the point, which alone count where a channel is drawn bilinearly. */
    private static final int NEXT = -Kernel.FIRST;

    private final int length;
    private final Placer.Channels channels;
    private final Position position;
    private final float[] within;
    private final int[] ends;
    private final int[] lines;
    private final float[][] sharp;
    private final float[][] plain;
    private int blocks;
    /** Whether {@link #within} is that of one block as long as the line, which most lines need. */
    private boolean whole;

    /** Where a result lies in the source. */
    interface Position {
        /** @return in lines of the source; positive */
        double at(int line, int along);
    }

    /** @param length of a channel of the lines */
    LineMix(int length, Placer.Channels channels, Position position) {
        this.length = length;
        this.channels = channels;
        this.position = position;
        this.within = new float[length * channels.all()];
        this.ends = new int[length];
        this.lines = new int[length];
        this.sharp = new float[length][];
        this.plain = new float[length][];
    }

    /** Works out the weights for a line of the result. */
    void prepare(int line) {
        double first = position.at(line, 0);
        double last = position.at(line, length - 1);
        double change = Math.abs(last - first);
        blocks = 0;
        if (change <= FRACTION && (int) first == (int) last) {
            block(first, last, 0, length);
            blocks = 1;
            return;
        }
        int longest = change <= FRACTION ? length : Math.max(1, (int) (length * FRACTION / change));
        for (int from = 0; from < length; from = ends[blocks++]) {
            int to = endOfBlock(line, from, Math.min(length, from + longest));
            block(position.at(line, from), position.at(line, to - 1), from, to);
        }
    }

    /** The first place after {@code from}, up to {@code to}, at which the point moves past another line of the source. */
    private int endOfBlock(int line, int from, int to) {
        int source = (int) position.at(line, from);
        if ((int) position.at(line, to - 1) == source) return to;
        int same = from;
        int other = to - 1;
        while (other - same > 1) {
            int middle = (same + other) / 2;
            if ((int) position.at(line, middle) == source) same = middle;
            else other = middle;
        }
        return other;
    }

    private void block(double first, double last, int from, int to) {
        int source = (int) first;
        ends[blocks] = to;
        lines[blocks] = source + Kernel.FIRST;
        if (sharp[blocks] == null) {
            sharp[blocks] = new float[TERMS * Kernel.TAPS];
            plain[blocks] = new float[TERMS * Kernel.TAPS];
        }
        parabolas(first - source, (first + last) / 2 - source, last - source);
        count(from, to);
    }

    /** Through the weights at 0, 1/2 and 1 of the block. */
    private void parabolas(double first, double middle, double last) {
        float[] w = Kernel.weights();
        int at0 = Kernel.offset(first);
        int atHalf = Kernel.offset(middle);
        int at1 = Kernel.offset(last);
        float[] out = sharp[blocks];
        for (int k = 0; k < Kernel.TAPS; k++) {
            float a = w[at0 + k];
            float b = w[atHalf + k];
            float c = w[at1 + k];
            out[k] = a;
            out[Kernel.TAPS + k] = 4 * b - 3 * a - c;
            out[2 * Kernel.TAPS + k] = 2 * (a + c) - 4 * b;
        }
        float[] straight = plain[blocks];
        straight[NEXT] = (float) (1 - first);
        straight[NEXT + 1] = (float) first;
        straight[Kernel.TAPS + NEXT] = (float) (first - last);
        straight[Kernel.TAPS + NEXT + 1] = (float) (last - first);
    }

    /** Writes how far along the block each place is, 0 to 1. */
    private void count(int from, int to) {
        boolean all = to - from == length;
        if (all && whole) return;
        float step = to - from > 1 ? 1f / (to - from - 1) : 0;
        for (int c = 0; c < channels.all(); c++) {
            for (int x = from; x < to; x++) within[c * length + x] = (x - from) * step;
        }
        whole = all;
    }

    /**
     * Mixes the prepared line.
     *
     * @param source lines of the source, the first of which is line {@code first}
     */
    void draw(float[][] source, int first, float[] out) {
        int sharpEnd = channels.sharp() * length;
        int end = channels.all() * length;
        Arrays.fill(out, 0, end, 0);
        if (blocks == 1) {
            drawSharply(0, source, lines[0] - first, 0, sharpEnd, out);
            if (end > sharpEnd) drawPlainly(0, source, lines[0] - first, sharpEnd, end, out);
            return;
        }
        int from = 0;
        for (int b = 0; b < blocks; b++) {
            int at = lines[b] - first;
            for (int c = 0; c < end; c += length) {
                if (c < sharpEnd) drawSharply(b, source, at, c + from, c + ends[b], out);
                else drawPlainly(b, source, at, c + from, c + ends[b], out);
            }
            from = ends[b];
        }
    }

    private void drawSharply(int block, float[][] source, int first, int from, int to, float[] out) {
        for (int tap = 0; tap < Kernel.TAPS; tap += AT_ONCE) {
            add(source[first + tap], source[first + tap + 1], sharp[block], tap, from, to, out);
        }
    }

    /** Bilinearly: a fifth of the work. */
    private void drawPlainly(int block, float[][] source, int first, int from, int to, float[] out) {
        add(source[first + NEXT], source[first + NEXT + 1], plain[block], NEXT, from, to, out);
    }

    private void add(float[] p, float[] q, float[] w, int tap, int from, int to, float[] out) {
        float p0 = w[tap], q0 = w[tap + 1];
        float p1 = w[tap + Kernel.TAPS], q1 = w[tap + 1 + Kernel.TAPS];
        float p2 = w[tap + 2 * Kernel.TAPS], q2 = w[tap + 1 + 2 * Kernel.TAPS];
        float[] at = within;
        for (int x = from; x < to; x++) {
            float i = at[x];
            out[x] += (p0 + (p1 + p2 * i) * i) * p[x] + (q0 + (q1 + q2 * i) * i) * q[x];
        }
    }
}
