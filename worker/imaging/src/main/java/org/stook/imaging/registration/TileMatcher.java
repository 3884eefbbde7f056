package org.stook.imaging.registration;

import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/**
 * Finds a tile of one frame in another to a few hundredths of a pixel: Gauss-Newton on shift, gain, offset and blur.
 *
 * <p>Gain and offset are solved together with the shift, so that exposure flicker does not pull at it (the parametric form
 * of the enhanced correlation coefficient: Evangelidis and Psarakis 2008, Parametric image alignment using enhanced
 * correlation coefficient maximization).
 */
final class TileMatcher {
    private static final int ITERATIONS = 8;
    private static final double CONVERGED = 0.03;
    /** How far a match may end from the guess, level pixels. */
    private static final double REACH = 6;

    /** Tiles whose finest detail does not rise so many times above the noise are left to a coarser level. */
    static final double LEAST_DETAIL = 5;

    /**
     * Typical angular frequency, per level pixel, below which a tile is left to a coarser level: there its blur is smaller
     * and better described by few terms.
     */
    private static final double LEAST_FREQUENCY = 0.4;

    private static final int RADIUS = TileFit.RADIUS;
    private static final int RING = TileFit.RING;

    private final Level first;
    private final Level second;
    private final Coordinates coordinates;
    private final Placement pixels;
    private final boolean coarsest;

    /**
     * @param guess first to second, normal coordinates
     * @param coarsest whether there is no coarser level to leave a tile to
     */
    TileMatcher(Level first, Level second, Coordinates coordinates, Placement guess, boolean coarsest) {
        this.first = first;
        this.second = second;
        this.coordinates = coordinates;
        this.pixels = coordinates.toPixels(guess, first.reduction());
        this.coarsest = coarsest;
    }

    /** The match of the tile centred on the spot; null when it has no detail, leaves the frame or runs away. */
    @Nullable
    Match match(Level.Spot spot) {
        double x = pixels.x(spot.x(), spot.y());
        double y = pixels.y(spot.x(), spot.y());
        if (!worthwhile(spot, x, y)) return null;
        float[] template = new float[RING * RING];
        copy(first.plane(), spot.x(), spot.y(), template);
        return descend(spot, new TileFit(template));
    }

    /** Whether the tile holds more than noise, and nothing that a coarser level would see better. */
    private boolean worthwhile(Level.Spot spot, double x, double y) {
        double detail = Math.min(first.detailOverNoise(spot.x(), spot.y()), second.detailOverNoise(x, y));
        double frequency = Math.max(first.frequency(spot.x(), spot.y()), second.frequency(x, y));
        return detail >= LEAST_DETAIL && (coarsest || frequency >= LEAST_FREQUENCY);
    }

    private @Nullable Match descend(Level.Spot spot, TileFit fit) {
        float[] sampled = new float[RING * RING];
        double dx = 0;
        double dy = 0;
        for (int i = 0; i < ITERATIONS; i++) {
            if (!sample(spot.x() + dx, spot.y() + dy, sampled) || !fit.step(sampled)) return null;
            dx += fit.stepX();
            dy += fit.stepY();
            if (Math.abs(dx) > REACH || Math.abs(dy) > REACH) return null;
            if (Math.hypot(fit.stepX(), fit.stepY()) < CONVERGED) {
                return found(spot, dx + fit.pullX(), dy + fit.pullY(), fit);
            }
        }
        return null;
    }

    private @Nullable Match found(Level.Spot spot, double dx, double dy, TileFit fit) {
        double[] c = fit.covariance();
        if (c.length == 0) return null;
        double x = spot.x() + dx;
        double y = spot.y() + dy;
        int r = first.reduction();
        double unit = coordinates.unit() / r;
        double scale = unit * unit / (c[0] * c[2] - c[1] * c[1]);
        return new Match(
                coordinates.normalX(spot.x(), r),
                coordinates.normalY(spot.y(), r),
                coordinates.normalX(pixels.x(x, y), r),
                coordinates.normalY(pixels.y(x, y), r),
                new Match.Information(c[2] * scale, -c[1] * scale, c[0] * scale),
                fit.zncc());
    }

    private static void copy(Plane plane, int cx, int cy, float[] into) {
        for (int j = 0; j < RING; j++) {
            int at = (cy + j - RADIUS - 1) * plane.width() + cx - RADIUS - 1;
            System.arraycopy(plane.samples(), at, into, j * RING, RING);
        }
    }

    /** Samples the second frame where the tile centred on (cx, cy) of the first maps to; false when that leaves the frame. */
    private boolean sample(double cx, double cy, float[] into) {
        double x0 = pixels.x(cx, cy);
        double y0 = pixels.y(cx, cy);
        double ax = pixels.x(cx + 1, cy) - x0;
        double ay = pixels.y(cx + 1, cy) - y0;
        double bx = pixels.x(cx, cy + 1) - x0;
        double by = pixels.y(cx, cy + 1) - y0;
        double r = RADIUS + 1;
        double spanX = r * (Math.abs(ax) + Math.abs(bx));
        double spanY = r * (Math.abs(ay) + Math.abs(by));
        Plane plane = second.plane();
        if (x0 - spanX < 1 || y0 - spanY < 1) return false;
        if (x0 + spanX > plane.width() - 3 || y0 + spanY > plane.height() - 3) return false;
        for (int j = 0; j < RING; j++) {
            double x = x0 - r * ax + (j - r) * bx;
            double y = y0 - r * ay + (j - r) * by;
            for (int i = 0; i < RING; i++) into[j * RING + i] = Cubic.at(plane, x + i * ax, y + i * ay);
        }
        return true;
    }
}
