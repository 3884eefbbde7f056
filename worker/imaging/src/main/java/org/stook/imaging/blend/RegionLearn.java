package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** The first pass, all at half size: the strongest detail of any frame, the noise, and where in the sweep detail peaks. */
final class RegionLearn {
    /** Mean over 10 % quantile of the detail of white noise in one channel (simulated). */
    private static final float MEAN_OVER_QUANTILE = 1.8f;
    /** One row in so many is enough to know the noise. */
    private static final int SAMPLED = 4;

    private static final int FEW_PIXELS = 100_000;

    private final Rows rows;
    private final Plane strongest;
    private final BandNoise noise = new BandNoise(MEAN_OVER_QUANTILE);
    private final FocusPeak peak;
    private final int sampled;

    RegionLearn(BlendPlan plan, Rows rows) {
        int w = Binomial.half(plan.width());
        int h = Binomial.half(plan.height());
        this.rows = rows;
        this.strongest = new Plane(w, h);
        this.peak = new FocusPeak(w, h);
        this.sampled = w * h > FEW_PIXELS ? SAMPLED : 1;
    }

    Plane strongest() {
        return strongest;
    }

    BandNoise noise() {
        return noise;
    }

    FocusPeak peak() {
        return peak;
    }

    /** @param half luminance of the frame at half size */
    void add(int frame, Frame placed, Plane half) {
        BandNoise.Counts counts = new BandNoise.Counts();
        rows.runWith(half.height(), () -> {
            DetailRows detail = new DetailRows(placed, half);
            return (from, to) -> {
                BandNoise.Counts own = new BandNoise.Counts();
                detail.each(from, to, (y, now) -> {
                    keepStrongest(y, now);
                    peak.add(frame, y, now);
                    if (y % sampled == 0) for (int x = 0; x < now.length; x++) own.add(half.at(x, y), now[x]);
                });
                counts.add(own);
            };
        });
        noise.learn(counts);
    }

    private void keepStrongest(int y, float[] now) {
        float[] best = strongest.samples();
        int at = y * now.length;
        for (int x = 0; x < now.length; x++) best[at + x] = Math.max(best[at + x], now[x]);
    }
}
