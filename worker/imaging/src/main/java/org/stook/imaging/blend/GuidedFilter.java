package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * The guided filter in its linear form: over each window a claim is explained as {@code slope * guide + offset}; slope and
 * offset, averaged over all windows that hold a pixel, are what is asked for. They are found at a quarter of the frame's
 * size, to be enlarged where they are used (He and Sun 2015), which costs a sixteenth and changes little, for they are
 * smooth.
 */
final class GuidedFilter {
    /** Window of 5 x 5 pixels at a quarter of the size. */
    private static final int RADIUS = 2;
    /** Contrast (squared, encoded values) below which an edge of the guide is not followed. */
    private static final float EPSILON = 1e-3f;

    private final Rows rows;
    private final Plane[] fitted;
    private final Plane[] averaged;

    /** @param width of guide and claim */
    GuidedFilter(int width, int height, Rows rows) {
        this.rows = rows;
        this.fitted = new Plane[] {new Plane(width, height), new Plane(width, height)};
        this.averaged = new Plane[] {new Plane(width, height), new Plane(width, height)};
    }

    /** Fits; {@link #slope} and {@link #offset} then hold the answer, until the next call. */
    void fit(Plane guide, Plane claim) {
        int w = guide.width();
        int h = guide.height();
        rows.runWith(h, () -> {
            BoxRows box = new BoxRows(w, h, RADIUS, 4, (y, lines) -> moments(guide, claim, y * w, lines));
            return (from, to) -> {
                for (int y = from; y < to; y++) solve(box.at(y), y * w);
            };
        });
        rows.runWith(h, () -> {
            BoxRows box = new BoxRows(w, h, RADIUS, 2, (y, lines) -> {
                for (int p = 0; p < 2; p++) System.arraycopy(fitted[p].samples(), y * w, lines[p], 0, w);
            });
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    float[][] means = box.at(y);
                    for (int p = 0; p < 2; p++) System.arraycopy(means[p], 0, averaged[p].samples(), y * w, w);
                }
            };
        });
    }

    Plane slope() {
        return averaged[0];
    }

    Plane offset() {
        return averaged[1];
    }

    private static void moments(Plane guide, Plane claim, int at, float[][] lines) {
        int w = lines[0].length;
        System.arraycopy(guide.samples(), at, lines[0], 0, w);
        System.arraycopy(claim.samples(), at, lines[1], 0, w);
        multiply(lines[0], lines[1], lines[2]);
        multiply(lines[0], lines[0], lines[3]);
    }

    private static void multiply(float[] a, float[] b, float[] out) {
        for (int x = 0; x < out.length; x++) out[x] = a[x] * b[x];
    }

    private void solve(float[][] mean, int at) {
        float[] g = mean[0];
        float[] c = mean[1];
        float[] gc = mean[2];
        float[] gg = mean[3];
        float[] slope = fitted[0].samples();
        float[] offset = fitted[1].samples();
        for (int x = 0; x < g.length; x++) {
            float s = (gc[x] - g[x] * c[x]) / (gg[x] - g[x] * g[x] + EPSILON);
            slope[at + x] = s;
            offset[at + x] = c[x] - s * g[x];
        }
    }
}
