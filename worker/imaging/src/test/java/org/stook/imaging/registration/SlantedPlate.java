package org.stook.imaging.registration;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.stook.imaging.frame.LumaSource;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/**
 * A rough plate, near at the left and far at the right, swept by {@code frames} focus positions: known placements, Gaussian
 * defocus, noise. Small and quick; made only for these tests.
 */
final class SlantedPlate implements LumaSource {
    private static final int MARGIN = 60;
    private static final double[] SIGMAS = {0.6, 1, 1.6, 2.4, 3.6, 5.4, 8};

    private final int width;
    private final int height;
    private final List<Placement> truth;
    private final double[] focus;
    private final double[] exposure;
    private final List<Plane> blurred = new ArrayList<>();

    /**
     * @param focus of each frame, 0 (left edge) to 1 (right edge)
     * @param exposure of each frame, a factor
     */
    SlantedPlate(int width, int height, List<Placement> truth, double[] focus, double[] exposure) {
        this.width = width;
        this.height = height;
        this.truth = truth;
        this.focus = focus;
        this.exposure = exposure;
        Plane texture = texture();
        for (double sigma : SIGMAS) blurred.add(gaussian(texture, sigma));
    }

    static double[] evenFocus(int frames) {
        double[] focus = new double[frames];
        for (int f = 0; f < frames; f++) focus[f] = frames == 1 ? 0.5 : (double) f / (frames - 1);
        return focus;
    }

    static double[] steady(int frames) {
        double[] exposure = new double[frames];
        java.util.Arrays.fill(exposure, 1);
        return exposure;
    }

    List<Placement> truth() {
        return truth;
    }

    @Override
    public int frames() {
        return truth.size();
    }

    @Override
    public int width() {
        return width;
    }

    @Override
    public int height() {
        return height;
    }

    @Override
    public Plane read(int frame, int reduction) {
        Placement back = truth.get(frame).inverse();
        Random noise = new Random(frame);
        Plane plane = new Plane(width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) {
                double v = seen(back.x(x, y), back.y(x, y), focus[frame]) * exposure[frame];
                plane.set(x, y, (float) (v + 0.004 * noise.nextGaussian()));
            }
        }
        return mean(plane, reduction);
    }

    private double seen(double x, double y, double focused) {
        double sigma = 0.6 + 9 * Math.abs(x / width - focused);
        int k = 0;
        while (k < SIGMAS.length - 2 && SIGMAS[k + 1] < sigma) k++;
        double t = Math.min(1, (sigma - SIGMAS[k]) / (SIGMAS[k + 1] - SIGMAS[k]));
        double px = Math.min(Math.max(x + MARGIN, 2), width + 2 * MARGIN - 4);
        double py = Math.min(Math.max(y + MARGIN, 2), height + 2 * MARGIN - 4);
        return (1 - t) * Cubic.at(blurred.get(k), px, py) + t * Cubic.at(blurred.get(k + 1), px, py);
    }

    private Plane texture() {
        Random random = new Random(7);
        int w = width + 2 * MARGIN;
        int h = height + 2 * MARGIN;
        Plane sum = new Plane(w, h);
        for (double sigma : new double[] {0.8, 2.5, 8, 25}) {
            Plane grain = new Plane(w, h);
            for (int i = 0; i < w * h; i++) grain.samples()[i] = (float) random.nextGaussian();
            Plane smooth = gaussian(grain, sigma);
            float gain = (float) (0.06 * 2 * Math.sqrt(Math.PI) * sigma);
            for (int i = 0; i < w * h; i++) sum.samples()[i] += gain * smooth.samples()[i];
        }
        for (int i = 0; i < w * h; i++) sum.samples()[i] += 0.5f;
        return sum;
    }

    private static Plane gaussian(Plane in, double sigma) {
        return transposed(rows(transposed(rows(in, sigma)), sigma));
    }

    private static Plane rows(Plane in, double sigma) {
        int r = (int) Math.ceil(3.5 * sigma);
        double[] k = new double[2 * r + 1];
        double total = 0;
        for (int i = -r; i <= r; i++) total += k[i + r] = Math.exp(-i * i / (2 * sigma * sigma));
        Plane out = new Plane(in.width(), in.height());
        for (int y = 0; y < in.height(); y++) {
            for (int x = 0; x < in.width(); x++) {
                double v = 0;
                for (int i = -r; i <= r; i++) v += k[i + r] * in.at(Math.min(Math.max(x + i, 0), in.width() - 1), y);
                out.set(x, y, (float) (v / total));
            }
        }
        return out;
    }

    private static Plane transposed(Plane in) {
        Plane out = new Plane(in.height(), in.width());
        for (int y = 0; y < in.height(); y++) for (int x = 0; x < in.width(); x++) out.set(y, x, in.at(x, y));
        return out;
    }

    private static Plane mean(Plane in, int n) {
        if (n == 1) return in;
        Plane out = new Plane(in.width() / n, in.height() / n);
        for (int y = 0; y < out.height(); y++) {
            for (int x = 0; x < out.width(); x++) {
                float sum = 0;
                for (int j = 0; j < n; j++) for (int i = 0; i < n; i++) sum += in.at(x * n + i, y * n + j);
                out.set(x, y, sum / (n * n));
            }
        }
        return out;
    }
}
