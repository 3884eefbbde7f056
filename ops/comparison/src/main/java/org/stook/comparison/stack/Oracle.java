package org.stook.comparison.stack;

import java.util.stream.IntStream;
import org.stook.imaging.frame.Frame;

/**
 * The best that picking one frame a pixel can do when the truth is known: at each pixel the frame whose squared error, over all
 * channels and smoothed by a Gaussian of 2 px, is least. Frames are added one at a time in the geometry of the truth.
 */
public final class Oracle {
    private static final double SIGMA = 2;
    private static final double[] TAPS = taps();

    private final Frame truth;
    private final Frame chosen;
    private final float[] least;

    public Oracle(Frame truth) {
        this.truth = truth;
        chosen = Frame.blank(truth.width(), truth.height(), truth.channels());
        least = new float[truth.width() * truth.height()];
        java.util.Arrays.fill(least, Float.MAX_VALUE);
    }

    /** Looks at one more frame. */
    public void add(Frame placed) {
        float[] error = smoothed(squaredError(placed));
        IntStream.range(0, truth.height()).parallel().forEach(y -> {
            for (int i = y * truth.width(); i < (y + 1) * truth.width(); i++) {
                if (error[i] >= least[i]) continue;
                least[i] = error[i];
                for (int c = 0; c < truth.channels(); c++)
                    chosen.plane(c).samples()[i] = placed.plane(c).samples()[i];
            }
        });
    }

    /** The composite. */
    public Frame composite() {
        return chosen;
    }

    private float[] squaredError(Frame placed) {
        float[] error = new float[least.length];
        for (int c = 0; c < truth.channels(); c++) {
            float[] a = placed.plane(c).samples();
            float[] b = truth.plane(c).samples();
            for (int i = 0; i < error.length; i++) error[i] += (a[i] - b[i]) * (a[i] - b[i]);
        }
        return error;
    }

    private float[] smoothed(float[] in) {
        int w = truth.width();
        int h = truth.height();
        int reach = TAPS.length / 2;
        float[] rows = new float[in.length];
        float[] out = new float[in.length];
        IntStream.range(0, h).parallel().forEach(y -> {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                for (int k = -reach; k <= reach; k++) sum += TAPS[k + reach] * in[y * w + clamp(x + k, w)];
                rows[y * w + x] = (float) sum;
            }
        });
        IntStream.range(0, h).parallel().forEach(y -> {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                for (int k = -reach; k <= reach; k++) sum += TAPS[k + reach] * rows[clamp(y + k, h) * w + x];
                out[y * w + x] = (float) sum;
            }
        });
        return out;
    }

    private static int clamp(int v, int extent) {
        return Math.max(0, Math.min(extent - 1, v));
    }

    private static double[] taps() {
        int reach = (int) Math.ceil(4 * SIGMA);
        double[] taps = IntStream.rangeClosed(-reach, reach)
                .mapToDouble(d -> Math.exp(-d * d / (2 * SIGMA * SIGMA)))
                .toArray();
        double sum = java.util.Arrays.stream(taps).sum();
        return java.util.Arrays.stream(taps).map(t -> t / sum).toArray();
    }
}
