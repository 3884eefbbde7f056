package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * The guided filter in its linear form: over each window a claim is explained as {@code slope * guide + offset}; slope and
 * offset, averaged over all windows that hold a pixel, are what is asked for. Applied at half size they are enlarged and
 * put to the full-size guide (He and Sun 2015).
 */
final class GuidedFilter {
    /** Window of 7 x 7 pixels at half size. */
    private static final int RADIUS = 3;
    /** Contrast (squared, encoded values) below which an edge of the guide is not followed. */
    private static final float EPSILON = 1e-3f;

    private final Rows rows;
    private final Plane line;
    private final Plane product;
    private final Plane meanGuide;
    private final Plane meanClaim;
    private final Plane slope;
    private final Plane offset;

    GuidedFilter(int width, int height, Rows rows) {
        this.rows = rows;
        this.line = new Plane(width, height);
        this.product = new Plane(width, height);
        this.meanGuide = new Plane(width, height);
        this.meanClaim = new Plane(width, height);
        this.slope = new Plane(width, height);
        this.offset = new Plane(width, height);
    }

    /** Fits; {@link #slope} and {@link #offset} then hold the answer until the next call. */
    void fit(Plane guide, Plane claim) {
        mean(guide, meanGuide);
        mean(claim, meanClaim);
        mean(multiply(guide, claim), slope);
        mean(multiply(guide, guide), offset);
        float[] g = meanGuide.samples();
        float[] c = meanClaim.samples();
        float[] s = slope.samples();
        float[] o = offset.samples();
        each((i) -> {
            s[i] = (s[i] - g[i] * c[i]) / (o[i] - g[i] * g[i] + EPSILON);
            o[i] = c[i] - s[i] * g[i];
        });
        mean(slope, slope);
        mean(offset, offset);
    }

    Plane slope() {
        return slope;
    }

    Plane offset() {
        return offset;
    }

    private Plane multiply(Plane a, Plane b) {
        each(i -> product.samples()[i] = a.samples()[i] * b.samples()[i]);
        return product;
    }

    private interface Pixel {
        void at(int i);
    }

    private void each(Pixel pixel) {
        int width = line.width();
        rows.run(line.height(), (from, to) -> {
            for (int i = from * width; i < to * width; i++) pixel.at(i);
        });
    }

    /** Mean over the window, mirrored at the border; {@code out} may be {@code in}. */
    private void mean(Plane in, Plane out) {
        int width = line.width();
        int height = line.height();
        rows.run(height, (from, to) -> {
            for (int y = from; y < to; y++) across(in.samples(), y * width, width);
        });
        rows.run(height, (from, to) -> {
            for (int y = from; y < to; y++) down(y, out.samples());
        });
    }

    private void across(float[] in, int start, int width) {
        float[] out = line.samples();
        for (int x = 0; x < width; x++) {
            float sum = 0;
            if (x >= RADIUS && x < width - RADIUS) {
                for (int k = -RADIUS; k <= RADIUS; k++) sum += in[start + x + k];
            } else {
                for (int k = -RADIUS; k <= RADIUS; k++) sum += in[start + Binomial.mirror(x + k, width)];
            }
            out[start + x] = sum;
        }
    }

    private void down(int y, float[] out) {
        int width = line.width();
        float[] in = line.samples();
        int start = y * width;
        float scale = 1f / ((2 * RADIUS + 1) * (2 * RADIUS + 1));
        int first = Binomial.mirror(y - RADIUS, line.height()) * width;
        for (int x = 0; x < width; x++) out[start + x] = in[first + x];
        for (int k = 1 - RADIUS; k <= RADIUS; k++) {
            int row = Binomial.mirror(y + k, line.height()) * width;
            for (int x = 0; x < width; x++) out[start + x] += in[row + x];
        }
        for (int x = 0; x < width; x++) out[start + x] *= scale;
    }
}
