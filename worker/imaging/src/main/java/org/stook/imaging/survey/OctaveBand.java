package org.stook.imaging.survey;

import org.stook.imaging.frame.Plane;

/** The finest octave of a plane: what a (1 4 6 4 1)/16 blur takes away. */
final class OctaveBand {
    private OctaveBand() {}

    static Plane of(Plane in) {
        int w = in.width();
        int h = in.height();
        float[] s = in.samples();
        Plane out = new Plane(w, h);
        float[] column = new float[w];
        for (int y = 0; y < h; y++) {
            int a = Math.max(0, y - 2) * w;
            int b = Math.max(0, y - 1) * w;
            int c = y * w;
            int d = Math.min(h - 1, y + 1) * w;
            int e = Math.min(h - 1, y + 2) * w;
            for (int x = 0; x < w; x++) {
                column[x] = (s[a + x] + s[e + x] + 4 * (s[b + x] + s[d + x]) + 6 * s[c + x]) * 0.0625f;
            }
            for (int x = 0; x < w; x++) {
                float outer = column[Math.max(0, x - 2)] + column[Math.min(w - 1, x + 2)];
                float inner = column[Math.max(0, x - 1)] + column[Math.min(w - 1, x + 1)];
                out.samples()[c + x] = s[c + x] - (outer + 4 * inner + 6 * column[x]) * 0.0625f;
            }
        }
        return out;
    }
}
