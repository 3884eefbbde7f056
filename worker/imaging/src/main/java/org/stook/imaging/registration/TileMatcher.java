package org.stook.imaging.registration;

import org.jspecify.annotations.Nullable;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

/**
 * Finds a tile of one frame in another to a few hundredths of a pixel: Gauss-Newton on shift, gain and offset.
 *
 * <p>Gain and offset are solved together with the shift, so that neither exposure flicker nor the lower contrast of a
 * defocused neighbour pulls at it (the parametric form of the enhanced correlation coefficient, Evangelidis and Psarakis
 * 2008, Parametric image alignment using enhanced correlation coefficient maximization). The gradient is the mean of both
 * tiles' (Benhimane and Malis 2004, efficient second-order minimisation): symmetric in the two, which matters where one is
 * sharper than the other.
 */
final class TileMatcher {
    /** Half side of a tile, pixels of the level. */
    static final int RADIUS = 15;

    private static final int SIDE = 2 * RADIUS + 1;
    private static final int RING = SIDE + 2;
    private static final int ITERATIONS = 8;
    private static final double CONVERGED = 0.01;
    /** What no tile is better than, level pixels: interpolation and aliasing. */
    private static final double FLOOR = 0.03;

    private static final float[] WINDOW = window();

    private final Level first;
    private final Level second;
    private final Coordinates coordinates;
    private final Placement pixels;
    private final double reach;

    /**
     * @param guess first to second, normal coordinates
     * @param reach how far from the guess a match may end, level pixels
     */
    TileMatcher(Level first, Level second, Coordinates coordinates, Placement guess, double reach) {
        this.first = first;
        this.second = second;
        this.coordinates = coordinates;
        this.pixels = coordinates.toPixels(guess, first.reduction());
        this.reach = reach;
    }

    /** The match of the tile centred on the spot; null when it leaves the frame, runs away or does not resemble. */
    @Nullable
    Match match(Level.Spot spot) {
        float[] template = new float[RING * RING];
        copy(first.plane(), spot.x(), spot.y(), template);
        Fit fit = new Fit(template);
        double dx = 0;
        double dy = 0;
        for (int i = 0; i < ITERATIONS; i++) {
            if (!sample(spot, dx, dy, fit.sampled) || !fit.step()) return null;
            dx += fit.stepX;
            dy += fit.stepY;
            if (Math.abs(dx) > reach || Math.abs(dy) > reach) return null;
            if (Math.hypot(fit.stepX, fit.stepY) < CONVERGED) return found(spot, dx, dy, fit);
        }
        return null;
    }

    private @Nullable Match found(Level.Spot spot, double dx, double dy, Fit fit) {
        double x = spot.x() + dx;
        double y = spot.y() + dy;
        int r = first.reduction();
        double unit = coordinates.unit() / r;
        double floor = FLOOR * FLOOR;
        double cxx = fit.covXx + floor;
        double cyy = fit.covYy + floor;
        double scale = unit * unit / (cxx * cyy - fit.covXy * fit.covXy);
        return new Match(
                coordinates.normalX(spot.x(), r),
                coordinates.normalY(spot.y(), r),
                coordinates.normalX(pixels.x(x, y), r),
                coordinates.normalY(pixels.y(x, y), r),
                cyy * scale,
                -fit.covXy * scale,
                cxx * scale,
                fit.zncc);
    }

    private static void copy(Plane plane, int cx, int cy, float[] into) {
        for (int j = 0; j < RING; j++) {
            int at = (cy + j - RADIUS - 1) * plane.width() + cx - RADIUS - 1;
            System.arraycopy(plane.samples(), at, into, j * RING, RING);
        }
    }

    /** Samples the second frame around the mapped tile; false when that leaves the frame. */
    private boolean sample(Level.Spot spot, double dx, double dy, float[] into) {
        double cx = spot.x() + dx;
        double cy = spot.y() + dy;
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
            for (int i = 0; i < RING; i++) {
                into[j * RING + i] = Cubic.at(plane, x + i * ax, y + i * ay);
            }
        }
        return true;
    }

    private static float[] window() {
        float[] w = new float[SIDE * SIDE];
        for (int y = 0; y < SIDE; y++) {
            for (int x = 0; x < SIDE; x++) w[y * SIDE + x] = (float) (hann(x) * hann(y));
        }
        return w;
    }

    private static double hann(int i) {
        return 0.5 - 0.5 * Math.cos(2 * Math.PI * (i + 1) / (SIDE + 1));
    }

    /** The least-squares problem of one tile. */
    private static final class Fit {
        /** Second-order moments of the residual are correlated over about this many pixels (the smoothing kernels). */
        private static final double CORRELATED = 4;

        final float[] template;
        final float[] sampled = new float[RING * RING];
        private final double[][] normal = new double[4][5];
        double stepX;
        double stepY;
        double gain = 1;
        double covXx;
        double covXy;
        double covYy;
        double zncc;

        Fit(float[] template) {
            this.template = template;
        }

        /** One Gauss-Newton step; false when the tile cannot hold it. */
        boolean step() {
            double squares = accumulate();
            double mean = normal[3][4] / normal[3][3];
            double total = squares - mean * normal[3][4];
            double[] solution = SmallSolver.solve(normal);
            if (solution.length == 0) return false;
            double explained = 0;
            for (int k = 0; k < 4; k++) explained += solution[k] * normal[k][4];
            double residual = Math.max(0, squares - explained);
            stepX = solution[0];
            stepY = solution[1];
            gain = Math.min(2, Math.max(0.25, solution[2]));
            if (solution[2] <= 0 || total <= 0) return false;
            zncc = Math.sqrt(Math.max(0, 1 - residual / total));
            covariance(residual);
            return true;
        }

        private void covariance(double residual) {
            double samples = normal[3][3];
            double variance = residual / samples * CORRELATED;
            double[] x = SmallSolver.solve(SmallSolver.with(normal, new double[] {1, 0, 0, 0}));
            double[] y = SmallSolver.solve(SmallSolver.with(normal, new double[] {0, 1, 0, 0}));
            if (x.length == 0 || y.length == 0) return;
            covXx = variance * x[0];
            covXy = variance * x[1];
            covYy = variance * y[1];
        }

        /** Fills the normal equations of (step x, step y, gain, offset); returns the weighted sum of squares. */
        private double accumulate() {
            for (double[] row : normal) java.util.Arrays.fill(row, 0);
            double squares = 0;
            double[] f = new double[4];
            f[3] = 1;
            for (int y = 1; y <= SIDE; y++) {
                for (int x = 1; x <= SIDE; x++) {
                    int at = y * RING + x;
                    double w = WINDOW[(y - 1) * SIDE + x - 1];
                    f[0] = -0.25 * (sampled[at + 1] - sampled[at - 1] + gain * (template[at + 1] - template[at - 1]));
                    f[1] = -0.25
                            * (sampled[at + RING]
                                    - sampled[at - RING]
                                    + gain * (template[at + RING] - template[at - RING]));
                    f[2] = template[at];
                    double v = sampled[at];
                    squares += w * v * v;
                    for (int j = 0; j < 4; j++) {
                        double wf = w * f[j];
                        for (int k = j; k < 4; k++) normal[j][k] += wf * f[k];
                        normal[j][4] += wf * v;
                    }
                }
            }
            for (int j = 1; j < 4; j++) for (int k = 0; k < j; k++) normal[j][k] = normal[k][j];
            return squares;
        }
    }
}
