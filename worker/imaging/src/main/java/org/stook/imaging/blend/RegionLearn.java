package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/** The first pass, all at half size: the strongest detail of any frame, the noise, and where in the sweep detail peaks. */
final class RegionLearn {
    /** Mean over 10 % quantile of the detail of white noise in one channel (simulated). */
    private static final float MEAN_OVER_QUANTILE = 1.8f;
    /** One row in so many is enough to know the noise. */
    private static final int SAMPLED = 4;

    private static final int FEW_PIXELS = 100_000;

    private final Rows rows;
    private final BandNoise noise = new BandNoise(MEAN_OVER_QUANTILE);
    private final FocusPeak peak;
    private final int sampled;

    RegionLearn(int width, int height, Rows rows) {
        this.rows = rows;
        this.peak = new FocusPeak(width, height);
        this.sampled = width * height > FEW_PIXELS ? SAMPLED : 1;
    }

    BandNoise noise() {
        return noise;
    }

    FocusPeak peak() {
        return peak;
    }

    /**
     * @param detail of the frame, half size
     * @param guide its luminance, a quarter of the size
     */
    void add(int rank, Plane detail, Plane guide) {
        BandNoise.Counts counts = new BandNoise.Counts();
        rows.runWith(detail.height(), () -> {
            float[] line = new float[detail.width()];
            return (from, to) -> {
                BandNoise.Counts own = new BandNoise.Counts();
                for (int y = from; y < to; y++) {
                    System.arraycopy(detail.samples(), y * line.length, line, 0, line.length);
                    peak.add(rank, y, line);
                    if (y % sampled == 0) count(line, guide, y, own);
                }
                counts.add(own);
            };
        });
        noise.learn(counts);
    }

    private static void count(float[] detail, Plane guide, int y, BandNoise.Counts into) {
        int at = y / 2 * guide.width();
        for (int x = 0; x < detail.length; x++) into.add(guide.samples()[at + x / 2], detail[x]);
    }

    /** All frames have been added: what was kept of neighbouring frames makes room. */
    void settle(int frames) {
        peak.settle(frames, rows);
    }
}
