package org.stook.scenes.subject;

/** The outline of a flat part: how far inside a point lies, in picture heights, negative outside. */
@FunctionalInterface
interface Outline {
    double inside(double x, double y);

    /** What lies in this outline but not in the other. */
    default Outline without(Outline hole) {
        return (x, y) -> Math.min(inside(x, y), -hole.inside(x, y));
    }

    /** What lies in either. */
    default Outline with(Outline other) {
        return (x, y) -> Math.max(inside(x, y), other.inside(x, y));
    }

    static Outline disc(double cx, double cy, double radius) {
        return (x, y) -> radius - Edges.length(x - cx, y - cy);
    }

    /** A bar with round ends. */
    static Outline bar(double x0, double y0, double x1, double y1, double halfWidth) {
        double dx = x1 - x0;
        double dy = y1 - y0;
        double square = dx * dx + dy * dy;
        return (x, y) -> {
            double t = Edges.clamp(((x - x0) * dx + (y - y0) * dy) / square);
            return halfWidth - Edges.length(x - x0 - t * dx, y - y0 - t * dy);
        };
    }

    /** A toothed wheel: {@code radius} at the middle of the teeth, which rise and fall by {@code tooth}. */
    static Outline toothed(double cx, double cy, double radius, double tooth, int teeth) {
        return (x, y) -> {
            double r = Edges.length(x - cx, y - cy);
            if (r < radius - 2 * tooth) return radius - tooth - r;
            double phase = teeth * StrictMath.atan2(y - cy, x - cx);
            double wave = 1.6 * StrictMath.cos(phase);
            double held = Math.max(-1, Math.min(1, wave));
            double steep = Math.abs(wave) < 1 ? 1.6 * tooth * teeth / radius * Math.abs(StrictMath.sin(phase)) : 0;
            double flank = (radius + tooth * held - r) / Math.sqrt(1 + steep * steep);
            return Math.min(flank, radius + tooth - r);
        };
    }

    /** Openings between spokes, from {@code inner} to {@code outer} radius. */
    static Outline openings(double cx, double cy, double inner, double outer, int spokes) {
        return (x, y) -> {
            double r = Edges.length(x - cx, y - cy);
            double ring = Math.min(r - inner, outer - r);
            double turn = StrictMath.atan2(y - cy, x - cx) * spokes / (2 * Math.PI);
            double off = Math.abs(turn - Math.rint(turn)) * 2 * Math.PI / spokes;
            return Math.min(ring, r * StrictMath.sin(Math.min(off, Math.PI / 2)) - 0.12 * outer);
        };
    }

    /** A wire wound outwards from {@code inner} to {@code outer} radius. */
    static Outline spiral(double cx, double cy, double inner, double outer, double pitch, double halfWidth) {
        return (x, y) -> {
            double r = Edges.length(x - cx, y - cy);
            double wound = (r - inner) / pitch - StrictMath.atan2(y - cy, x - cx) / (2 * Math.PI);
            double off = Math.abs(wound - Math.rint(wound)) * pitch;
            return Math.min(halfWidth - off, Math.min(r - inner, outer - r));
        };
    }
}
