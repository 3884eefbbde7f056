package org.stook.imaging.blend;

import org.stook.imaging.frame.Plane;

/**
 * A frame's claim to each region, 0 to 1, at a quarter of the composite's size: the mean over the neighbourhood of how near
 * its detail comes to the strongest of any frame, weighted by that strongest detail.
 */
final class Claims {
    /** Detail that counts as none, in units of noise energy; not zero, so that bare regions have an average at all. */
    private static final float NONE = 1e-3f;

    private final Plane strongest;
    private final BandNoise noise;
    private final Rows rows;
    private final Neighbourhood neighbourhood;
    private final Plane near;
    private final Plane share;
    private final Plane weight;
    private final Plane claim;
    private final GuidedFilter filter;
    private boolean weighted;

    Claims(RegionLearn learnt, Rows rows) {
        this.strongest = learnt.peak().strongest();
        this.noise = learnt.noise();
        this.rows = rows;
        int w = Binomial.half(strongest.width());
        int h = Binomial.half(strongest.height());
        this.neighbourhood = new Neighbourhood(w, h, rows);
        this.near = new Plane(strongest.width(), strongest.height());
        this.share = new Plane(w, h);
        this.weight = new Plane(w, h);
        this.claim = new Plane(w, h);
        this.filter = new GuidedFilter(w, h, rows);
    }

    /**
     * Finds the claim of a frame. Only after the strongest detail of all frames is known.
     *
     * @param detail of the frame, half size
     * @param guide its luminance, a quarter of the size
     */
    void find(Plane detail, Plane guide) {
        if (!weighted) {
            each(guide, (y, lines) -> weigh(y, lines));
            neighbourhood.average(share, weight);
            weighted = true;
        }
        each(guide, (y, lines) -> compare(y, detail, lines));
        neighbourhood.average(share, claim);
        float[] c = claim.samples();
        float[] w = weight.samples();
        int width = claim.width();
        rows.run(claim.height(), (from, to) -> {
            for (int i = from * width; i < to * width; i++) {
                float mean = c[i] / w[i];
                c[i] = mean * mean;
            }
        });
        filter.fit(guide, claim);
    }

    /** How near the frame's detail comes to the strongest, at half size: 1 is the strongest itself. */
    Plane near() {
        return near;
    }

    /** The claim before it is fitted. */
    Plane claim() {
        return claim;
    }

    /** The claim, fitted to the frame's own edges. */
    GuidedFilter fitted() {
        return filter;
    }

    /** Fills a line at half size from what is known of row {@code y}. */
    private interface HalfRow {
        void fill(int y, HalfLines lines);
    }

    /** Fills {@link #share} with a plane of half size that never exists as a whole, halved. */
    private void each(Plane guide, HalfRow row) {
        int h = strongest.height();
        rows.runWith(share.height(), () -> {
            HalvingRows halving = new HalvingRows(strongest.width(), h);
            HalfLines lines = new HalfLines(strongest.width());
            return (from, to) -> {
                for (int y = halving.begin(from, to); y < halving.end(); y++) {
                    System.arraycopy(strongest.samples(), y * lines.top.length, lines.top, 0, lines.top.length);
                    noise.along(guide, y, lines.floor);
                    lines.share = halving.slot(y);
                    lines.owned = y >= 2 * from && y < 2 * to;
                    row.fill(y, lines);
                    while (halving.ready(y)) halving.take(share);
                }
            };
        });
    }

    /** Buffers of one thread. */
    private static final class HalfLines {
        final float[] top;
        final float[] floor;
        final float[] own;
        float[] share = {};
        /** Whether the row belongs to this strip; else it is worked out only for the filter. */
        boolean owned;

        HalfLines(int width) {
            top = new float[width];
            floor = new float[width];
            own = new float[width];
        }
    }

    private static void weigh(int y, HalfLines lines) {
        float[] top = lines.top;
        float[] floor = lines.floor;
        float[] out = lines.share;
        for (int x = 0; x < out.length; x++) {
            out[x] = (float) Math.sqrt(Math.max(top[x] - floor[x], NONE * floor[x]));
        }
    }

    /**
     * Detail above the noise, each frame being granted twice the noise so that noise does not decide:
     * {@code max(0, own - floor) + 2 floor} is {@code max(own, floor) + floor}.
     */
    private void compare(int y, Plane detail, HalfLines lines) {
        weigh(y, lines);
        float[] top = lines.top;
        float[] floor = lines.floor;
        float[] own = lines.own;
        float[] out = lines.share;
        System.arraycopy(detail.samples(), y * own.length, own, 0, own.length);
        for (int x = 0; x < own.length; x++) {
            float ratio = (Math.max(own[x], floor[x]) + floor[x]) / (Math.max(top[x], floor[x]) + floor[x]);
            own[x] = ratio * ratio;
        }
        for (int x = 0; x < own.length; x++) out[x] = out[x] * own[x] * own[x];
        if (lines.owned) System.arraycopy(own, 0, near.samples(), y * own.length, own.length);
    }
}
