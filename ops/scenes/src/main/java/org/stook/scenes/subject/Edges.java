package org.stook.scenes.subject;

/** Soft steps: an edge spreads over two pixels, so that it can be resolved by pixels in any frame's geometry. */
final class Edges {
    private Edges() {}

    /** 0 at one pixel outside, 1 at one pixel inside, smooth between. */
    static double cover(double distanceInside, double pixel) {
        return step(-1, 1, distanceInside / pixel);
    }

    /** Cubic step from 0 at {@code from} to 1 at {@code to}. */
    static double step(double from, double to, double v) {
        double t = clamp((v - from) / (to - from));
        return t * t * (3 - 2 * t);
    }

    static double clamp(double v) {
        return v < 0 ? 0 : v > 1 ? 1 : v;
    }

    static double mix(double a, double b, double share) {
        return a + (b - a) * share;
    }

    /** Length of (x, y); quicker than the platform's, which guards against sizes that do not occur here. */
    static double length(double x, double y) {
        return Math.sqrt(x * x + y * y);
    }
}
