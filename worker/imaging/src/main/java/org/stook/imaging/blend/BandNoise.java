package org.stook.imaging.blend;

import java.util.Arrays;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * Noise energy of one band, by brightness, estimated from the frames themselves: in some frame of a sweep almost every
 * brightness is out of focus or plain somewhere, and there the local energy is noise alone. So of each frame a low
 * quantile of the local energy is taken, separately for each of {@value #BINS} steps of brightness (noise of encoded
 * values depends on brightness and vanishes where a channel clips), and of all frames so far the least. Common practice;
 * compare C. Liu et al., "Automatic Estimation and Removal of Noise from a Single Image", IEEE PAMI 30(2), 2008, who
 * take a lower envelope per brightness.
 */
final class BandNoise {
    private static final int BINS = 16;
    /** Slots of the histogram: the exponent and the three leading bits of the mantissa, so eight an octave. */
    private static final int SLOTS = 1 << 11;

    private static final int DROPPED_BITS = 20;

    private static final double QUANTILE = 0.1;
    /** A quarter of an 8-bit step: nobody sees detail weaker than this, and quantised frames have no noise of their own. */
    private static final float FLOOR = (0.25f / 255) * (0.25f / 255);

    private static final int FEWEST = 200;

    private final float[] least = new float[BINS];
    private final float meanOverQuantile;

    /** @param meanOverQuantile mean over 10 % quantile of the local energy of white noise; depends on the window */
    BandNoise(float meanOverQuantile) {
        this.meanOverQuantile = meanOverQuantile;
        Arrays.fill(least, Float.MAX_VALUE);
    }

    /** How often each local energy occurs in a frame, by brightness. Threads may each fill one and put them together. */
    static final class Counts {
        private final int[][] counts = new int[BINS][SLOTS];

        void add(float brightness, float energy) {
            counts[bin(brightness)][Float.floatToIntBits(energy) >>> DROPPED_BITS]++;
        }

        synchronized void add(Counts more) {
            for (int b = 0; b < BINS; b++) for (int i = 0; i < SLOTS; i++) counts[b][i] += more.counts[b][i];
        }
    }

    /** Learns from one more frame. */
    void learn(Counts frame) {
        lower(frame.counts);
    }

    /** Learns from one more frame. */
    void learn(Frame fine, Frame coarse) {
        Counts counts = new Counts();
        BandStrip strip = new BandStrip(fine, coarse);
        int w = fine.width();
        // One row in eight (every row of small bands) is plenty and spares most of the time.
        int step = fine.height() * (long) w > 100_000 ? 8 : 1;
        for (int y = 0; y < fine.height(); y += step) {
            strip.compute(y, y + 1);
            for (int x = 0; x < w; x++) {
                counts.add(brightness(coarse, y / 2 * coarse.width() + x / 2), strip.energy()[x]);
            }
        }
        learn(counts);
    }

    private void lower(int[][] counts) {
        int[] all = new int[SLOTS];
        for (int[] bin : counts) for (int i = 0; i < SLOTS; i++) all[i] += bin[i];
        float overall = quantile(all);
        for (int b = 0; b < BINS; b++) {
            boolean enough = Arrays.stream(counts[b]).sum() >= FEWEST;
            float energy = meanOverQuantile * (enough ? quantile(counts[b]) : overall);
            least[b] = Math.max(FLOOR, Math.min(least[b], energy));
        }
    }

    private static float quantile(int[] histogram) {
        long wanted =
                Math.round(QUANTILE * Arrays.stream(histogram).asLongStream().sum());
        long seen = 0;
        int i = 0;
        while (i < SLOTS - 1 && (seen += histogram[i]) < wanted) i++;
        return Float.intBitsToFloat(i << DROPPED_BITS);
    }

    private static float brightness(Frame coarse, int i) {
        float[] first = coarse.plane(0).samples();
        if (coarse.channels() == 1) return first[i];
        return (first[i] + coarse.plane(1).samples()[i] + coarse.plane(2).samples()[i]) * (1 / 3f);
    }

    private static int bin(float brightness) {
        return Math.max(0, Math.min(BINS - 1, (int) (brightness * BINS)));
    }

    /** Expected noise energy along row {@code y} of the band, the brightness being that of the coarser level. */
    void along(Frame coarse, int y, float[] out) {
        int o = y / 2 * coarse.width();
        int w = Math.min(out.length, 2 * coarse.width());
        for (int x = 0; x < w; x++) out[x] = least[bin(brightness(coarse, o + x / 2))];
    }

    /** Expected noise energy along row {@code y}, the brightness there being that of a plane of half the size. */
    void along(Plane brightness, int y, float[] out) {
        int at = y / 2 * brightness.width();
        float[] in = brightness.samples();
        for (int x = 0; x < out.length; x++) out[x] = least[bin(in[at + x / 2])];
    }

    /** The least noise energy of any brightness. */
    float lowest() {
        float low = least[0];
        for (float energy : least) low = Math.min(low, energy);
        return low;
    }
}
