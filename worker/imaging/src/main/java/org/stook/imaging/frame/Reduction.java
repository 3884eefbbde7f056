package org.stook.imaging.frame;

/**
 * Halving of planes. Output pixel i lies at input position {@code 2 i + 1/2}, as the mean of 2 x 2 pixels does, so that
 * {@link Placement#reducedBy} holds; the (1 3 3 1)/8 kernel aliases far less than that mean.
 */
public final class Reduction {
    private Reduction() {}

    /** Half the width and height, rounded down (at least 1); edges are continued by their last sample. */
    public static Plane half(Plane in) {
        int w = Math.max(1, in.width() / 2);
        int h = Math.max(1, in.height() / 2);
        Plane out = new Plane(w, h);
        float[] column = new float[in.width()];
        for (int y = 0; y < h; y++) {
            sumRows(in, 2 * y, column);
            halveRow(column, out.samples(), y * w, w);
        }
        return out;
    }

    private static void sumRows(Plane in, int y, float[] into) {
        int w = in.width();
        float[] s = in.samples();
        int last = in.height() - 1;
        int above = Math.max(0, y - 1) * w;
        int here = y * w;
        int below = Math.min(last, y + 1) * w;
        int far = Math.min(last, y + 2) * w;
        for (int x = 0; x < w; x++) {
            into[x] = (s[above + x] + s[far + x] + 3 * (s[here + x] + s[below + x])) * 0.125f;
        }
    }

    private static void halveRow(float[] in, float[] out, int at, int w) {
        int last = in.length - 1;
        for (int x = 0; x < w; x++) {
            int c = 2 * x;
            float outer = in[Math.max(0, c - 1)] + in[Math.min(last, c + 2)];
            out[at + x] = (outer + 3 * (in[c] + in[Math.min(last, c + 1)])) * 0.125f;
        }
    }
}
