package org.stook.imaging.survey;

import java.util.Arrays;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.frame.Reduction;

/** How noisy a frame is, from the frame alone. */
final class Noise {
    private static final double FLATTEST = 0.1;
    /** Energy that one unit of white noise leaves in each octave band: sums of squares of the kernels. */
    private static final double[] BAND_GAIN = bandGains(4);

    private Noise() {}

    /**
     * Standard deviation of white noise: the (1 -2 1) x (1 -2 1) operator leaves noise and little else (Immerkaer 1996, Fast
     * noise variance estimation), taken per tile; the flattest tenth of the tiles hold no texture.
     */
    static double of(Plane luma, Tiles tiles) {
        float[] energy = tiles.meanSquares(crossed(luma));
        Arrays.sort(energy);
        double pixels = (double) luma.width() * luma.height() / tiles.count();
        // A tenth of equally noisy tiles lies below the mean by this much, the operator's overlap (3.8 pixels) counted
        // in.
        double below = Math.min(0.5, 1.28 * Math.sqrt(2 * 3.8 / pixels));
        return Math.sqrt(energy[(int) (FLATTEST * (energy.length - 1))] / (36 * (1 - below)));
    }

    static double bandGain(int octave) {
        return BAND_GAIN[octave];
    }

    private static Plane crossed(Plane in) {
        int w = in.width();
        int h = in.height();
        float[] s = in.samples();
        Plane out = new Plane(w, h);
        for (int y = 1; y < h - 1; y++) {
            for (int x = 1; x < w - 1; x++) {
                int i = y * w + x;
                float sides = s[i - 1] + s[i + 1] + s[i - w] + s[i + w];
                float corners = s[i - w - 1] + s[i - w + 1] + s[i + w - 1] + s[i + w + 1];
                out.samples()[i] = 4 * s[i] - 2 * sides + corners;
            }
        }
        return out;
    }

    /**
     * By the response to a single bright pixel, averaged over where it may lie on the coarser grids. Halving and blurring work
     * along rows and down columns alike, so lines are enough: a band is {@code h x h - b x b}, with h the halved pixel of a
     * line and b the same blurred, and its energy {@code (h.h)^2 - 2 (h.b)^2 + (b.b)^2}.
     */
    private static double[] bandGains(int octaves) {
        int side = 16 << octaves;
        int phases = 1 << (octaves - 1);
        double[] halved = new double[octaves];
        double[] both = new double[octaves];
        double[] blurred = new double[octaves];
        for (int phase = 0; phase < phases; phase++) {
            Plane line = new Plane(side, 1);
            line.set(side / 2 + phase, 0, 1);
            for (int k = 0; k < octaves; k++) {
                if (k > 0) line = Reduction.half(line);
                Plane band = OctaveBand.of(line);
                for (int x = 0; x < line.width(); x++) {
                    double h = line.at(x, 0);
                    double b = h - band.at(x, 0);
                    halved[k] += h * h / phases;
                    both[k] += h * b / phases;
                    blurred[k] += b * b / phases;
                }
            }
        }
        double[] gain = new double[octaves];
        for (int k = 0; k < octaves; k++) {
            double energy = halved[k] * halved[k] - 2 * both[k] * both[k] + blurred[k] * blurred[k];
            // Every pixel is such a pixel, and 4^k of them share one sample of the octave.
            gain[k] = energy * (1 << 2 * k);
        }
        return gain;
    }
}
