package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;

/** The grey by which it is decided: (R + 2 G + B) / 4 of encoded values. */
final class Luma {
    private Luma() {}

    /** Fills {@code out} with row {@code y}. */
    static void row(Frame frame, int y, float[] out) {
        int w = frame.width();
        int at = y * w;
        float[] red = frame.plane(0).samples();
        if (frame.channels() == 1) {
            System.arraycopy(red, at, out, 0, w);
            return;
        }
        float[] green = frame.plane(1).samples();
        float[] blue = frame.plane(2).samples();
        for (int x = 0; x < w; x++) out[x] = 0.25f * (red[at + x] + blue[at + x]) + 0.5f * green[at + x];
    }
}
