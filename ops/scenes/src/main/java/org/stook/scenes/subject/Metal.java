package org.stook.scenes.subject;

import org.stook.scenes.subject.FlatPart.Finish;

/** How watch parts are finished. */
final class Metal {
    static final Tint BRASS = new Tint(0.72, 0.52, 0.22);
    static final Tint STEEL = new Tint(0.55, 0.57, 0.60);
    static final Tint BLUED = new Tint(0.06, 0.10, 0.38);
    static final Tint RUBY = new Tint(0.55, 0.04, 0.10);

    static final Tint NICKEL = new Tint(0.30, 0.29, 0.27);

    private final Grain grain;
    private final double pixel;

    Metal(Grain grain, double pixel) {
        this.grain = grain;
        this.pixel = pixel;
    }

    /** Brushed in rings about a centre; the light lies on it as a cross. */
    Finish turned(double cx, double cy, Tint tint) {
        return (x, y, hit) -> hit.colour(tint, rings(x - cx, y - cy, cx));
    }

    /** Small turned spots side by side, as on base plates; the seams between them are soft enough for pixels. */
    Finish spotted(Tint tint) {
        double wide = Math.max(0.034, 16 * pixel);
        double high = 0.866 * wide;
        return (x, y, hit) -> {
            double down = Math.floor(y / high);
            double[] first = {0, 0, Double.POSITIVE_INFINITY};
            double[] second = first;
            for (double row = down - 1; row <= down + 2; row++) {
                double shift = (row % 2 == 0 ? 0 : 0.5) * wide;
                double left = Math.floor((x - shift) / wide) * wide + shift;
                for (double cx = left; cx < left + 1.5 * wide; cx += wide) {
                    double[] spot = {cx, row * high, Edges.length(x - cx, y - row * high)};
                    if (spot[2] < first[2]) {
                        second = first;
                        first = spot;
                    } else if (spot[2] < second[2]) {
                        second = spot;
                    }
                }
            }
            double share = Edges.step(-1, 1, (second[2] - first[2]) / (2 * pixel));
            double light = spotLight(first, x, y);
            hit.colour(tint, share >= 1 ? light : Edges.mix(spotLight(second, x, y), light, share));
        };
    }

    private double spotLight(double[] spot, double x, double y) {
        return rings(x - spot[0], y - spot[1], 97 * spot[1] + 57 * spot[0]);
    }

    /** Straight broad stripes across fine lines, as on bridges. */
    Finish striped(double turn, Tint tint) {
        double c = StrictMath.cos(turn);
        double s = StrictMath.sin(turn);
        return (x, y, hit) -> {
            double u = x * c + y * s;
            double v = y * c - x * s;
            double stripe = 0.5 + 0.5 * StrictMath.sin(2 * Math.PI * u / 0.045);
            double lines = 0.13 * grain.at(u / cell(), v / (12 * cell())) + 0.08 * grain.at(u / (3 * cell()), v * 9);
            hit.colour(tint, Math.max(0.05, 0.55 + 0.35 * stripe + lines));
        };
    }

    /** A screw head: turned, with a slot. */
    Finish slotted(double cx, double cy, double turn, Tint tint) {
        double c = StrictMath.cos(turn);
        double s = StrictMath.sin(turn);
        return (x, y, hit) -> {
            double off = Math.abs((x - cx) * s - (y - cy) * c);
            double slot = Edges.cover(Math.max(0.005, 1.2 * pixel) - off, pixel);
            hit.colour(tint, rings(x - cx, y - cy, cx + cy) * (1 - 0.85 * slot));
        };
    }

    private double cell() {
        return Grain.FINEST * pixel;
    }

    private double rings(double x, double y, double offset) {
        double r = Math.sqrt(x * x + y * y);
        double turn = StrictMath.atan2(y, x);
        double fade = Edges.step(3 * pixel, 12 * pixel, r);
        // Along the ring the grain is stretched; it closes because the cosine does.
        double along = 4 * StrictMath.cos(turn) + 9 * offset;
        double lines = 0.13 * grain.at(r / cell(), along) + 0.10 * grain.at(r / (3 * cell()), along + 31);
        double cross = 0.16 * StrictMath.cos(2 * turn + 1.2);
        double dirt = 0.05 * grain.at(x / cell() + 400, y / cell());
        return Math.max(0.05, 0.78 + dirt + fade * (lines + cross));
    }
}
