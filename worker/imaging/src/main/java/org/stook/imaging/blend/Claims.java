package org.stook.imaging.blend;

import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/**
 * A frame's claim to each region, 0 to 1, at half size: the mean over the neighbourhood of how near its detail comes to
 * the strongest of any frame, weighted by that strongest detail.
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
        this.strongest = learnt.strongest();
        this.noise = learnt.noise();
        this.rows = rows;
        int w = strongest.width();
        int h = strongest.height();
        this.neighbourhood = new Neighbourhood(w, h, rows);
        this.near = new Plane(w, h);
        this.share = new Plane(w, h);
        this.weight = new Plane(w, h);
        this.claim = new Plane(w, h);
        this.filter = new GuidedFilter(w, h, rows);
    }

    /**
     * The claim of a frame, fitted to its own edges. Only after the strongest detail of all frames is known.
     *
     * @param half luminance of the frame at half size
     */
    GuidedFilter of(Frame placed, Plane half) {
        if (!weighted) {
            weigh(half);
            weighted = true;
        }
        compare(placed, half);
        neighbourhood.average(share, claim);
        float[] c = claim.samples();
        float[] w = weight.samples();
        rows.run(claim.height(), (from, to) -> {
            for (int i = from * claim.width(); i < to * claim.width(); i++) {
                float mean = c[i] / w[i];
                c[i] = mean * mean;
            }
        });
        filter.fit(half, claim);
        return filter;
    }

    /** How near the frame's detail comes to the strongest, at half size: 1 is the strongest itself. */
    Plane near() {
        return near;
    }

    private void weigh(Plane half) {
        rows.runWith(half.height(), () -> {
            Lines lines = new Lines(half.width());
            return (from, to) -> {
                for (int y = from; y < to; y++) {
                    noise.along(half, y, lines.floor);
                    weigh(y, lines);
                    System.arraycopy(lines.weight, 0, share.samples(), y * half.width(), half.width());
                }
            };
        });
        neighbourhood.average(share, weight);
    }

    private void compare(Frame placed, Plane half) {
        rows.runWith(half.height(), () -> {
            DetailRows detail = new DetailRows(placed, half);
            Lines lines = new Lines(half.width());
            return (from, to) -> detail.each(from, to, (y, own) -> {
                noise.along(half, y, lines.floor);
                weigh(y, lines);
                compare(y, own, lines);
            });
        });
    }

    /** Buffers of one thread. */
    private static final class Lines {
        final float[] floor;
        final float[] top;
        final float[] weight;

        Lines(int width) {
            floor = new float[width];
            top = new float[width];
            weight = new float[width];
        }
    }

    private void weigh(int y, Lines lines) {
        float[] top = lines.top;
        float[] floor = lines.floor;
        float[] out = lines.weight;
        System.arraycopy(strongest.samples(), y * top.length, top, 0, top.length);
        for (int x = 0; x < out.length; x++) {
            out[x] = (float) Math.sqrt(Math.max(top[x] - floor[x], NONE * floor[x]));
        }
    }

    /**
     * Detail above the noise, each frame being granted twice the noise so that noise does not decide:
     * {@code max(0, own - floor) + 2 floor} is {@code max(own, floor) + floor}.
     */
    private void compare(int y, float[] own, Lines lines) {
        float[] top = lines.top;
        float[] floor = lines.floor;
        int at = y * own.length;
        float[] ratio = near.samples();
        for (int x = 0; x < own.length; x++) {
            ratio[at + x] = (Math.max(own[x], floor[x]) + floor[x]) / (Math.max(top[x], floor[x]) + floor[x]);
        }
        float[] out = share.samples();
        float[] weight = lines.weight;
        for (int x = 0; x < own.length; x++) {
            float squared = ratio[at + x] * ratio[at + x];
            ratio[at + x] = squared;
            out[at + x] = weight[x] * squared * squared;
        }
    }
}
