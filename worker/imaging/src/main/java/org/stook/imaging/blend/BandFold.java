package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * The running blend of one band. Each frame weighs in with the eighth power of its detail: local energy, less what noise
 * alone would give, plus a reserve. Where a frame stands out it is as good as chosen; where all show noise alone the
 * reserve makes the weights even and the noise averages out.
 */
final class BandFold {
    /** Detail that every frame is granted, in units of noise energy: what a lucky noise sample may reach unnoticed. */
    private static final float RESERVE = 4;
    /** Of white noise in three channels under the 5 x 5 binomial window (simulated). */
    private static final float MEAN_OVER_QUANTILE = 1.6f;

    private final Frame sum;
    private final Plane weight;
    private final Plane best;
    private final BandNoise noise = new BandNoise(MEAN_OVER_QUANTILE);
    private final Rows rows;

    BandFold(int width, int height, int channels, Rows rows) {
        this.sum = Frame.blank(width, height, channels);
        this.weight = new Plane(width, height);
        this.best = new Plane(width, height);
        this.rows = rows;
    }

    int width() {
        return best.width();
    }

    int height() {
        return best.height();
    }

    /** Folds in the band between {@code fine} and {@code coarse}; {@code peak}, if given, learns the detail found. */
    void add(Frame fine, Frame coarse, int frame, FocusPeak... peaks) {
        noise.learn(fine, coarse);
        rows.runWith(height(), () -> {
            BandStrip strip = new BandStrip(fine, coarse);
            float[][] lines = new float[4][width()];
            return (from, to) -> {
                strip.compute(from, to);
                for (int y = from; y < to; y++) {
                    noise.along(coarse, y, lines[0]);
                    detail(strip.energy(), (y - from) * width(), lines[0], lines[1]);
                    for (FocusPeak peak : peaks) peak.add(frame, y, lines[1]);
                    weigh(y, lines);
                    mix(y, strip, strip.bandOffset(y - from), lines);
                }
            };
        });
    }

    private static void detail(float[] energy, int at, float[] noise, float[] out) {
        for (int x = 0; x < out.length; x++) {
            out[x] = Math.max(0, energy[at + x] - noise[x]) + RESERVE * noise[x];
        }
    }

    /** Turns noise and detail (lines 0, 1) into what to take and what to keep (2, 3), relative so that no power overflows. */
    private void weigh(int y, float[][] lines) {
        int w = width();
        float[] detail = lines[1];
        float[] take = lines[2];
        float[] keep = lines[3];
        float[] strongest = best.samples();
        float[] total = weight.samples();
        for (int x = 0; x < w; x++) {
            float now = detail[x];
            float before = strongest[y * w + x];
            float top = Math.max(now, before);
            float a = now / top;
            float b = before / top;
            a *= a;
            b *= b;
            a *= a;
            b *= b;
            take[x] = a * a;
            keep[x] = b * b;
            strongest[y * w + x] = top;
            total[y * w + x] = total[y * w + x] * keep[x] + take[x];
        }
    }

    private void mix(int y, BandStrip strip, int at, float[][] lines) {
        float[] take = lines[2];
        float[] keep = lines[3];
        int w = width();
        for (int c = 0; c < sum.channels(); c++) {
            float[] out = sum.plane(c).samples();
            float[] band = strip.band(c);
            for (int x = 0; x < w; x++) out[y * w + x] = out[y * w + x] * keep[x] + take[x] * band[at + x];
        }
    }

    /** Detail from which a sample is more than noise. */
    float believed() {
        return 2 * RESERVE * noise.lowest();
    }

    /** The blended band; the accumulator itself, used up. */
    Frame finish() {
        float[] total = weight.samples();
        for (Plane plane : sum.planes()) {
            float[] out = plane.samples();
            rows.run(height(), (from, to) -> {
                for (int i = from * width(); i < to * width(); i++) out[i] /= total[i];
            });
        }
        return sum;
    }
}
