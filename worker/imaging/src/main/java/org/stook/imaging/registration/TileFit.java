package org.stook.imaging.registration;

import java.util.Arrays;

/**
 * The least-squares problem of one tile: which shift, gain, offset and change of blur make the one look like the other.
 *
 * <p>Blur that differs between the frames is not noise. To first order in the change D of (half) the spread's variance,
 * defocus adds {@code laplacian(D T)} to a tile T: a sharpening or softening term {@code D laplacian(T)}, and, where the
 * surface is slanted so that D changes across the tile, a term {@code 2 grad(D) . grad(T)} that looks exactly like a shift.
 * So D and its slope are solved for as well, and the shift that is none is taken off again. (The pull of uneven blur on
 * apparent position is why direct alignment of brackets otherwise finds too much or too little breathing.)
 */
final class TileFit {
    /** Half side of a tile, pixels of the level. */
    static final int RADIUS = 15;

    static final int SIDE = 2 * RADIUS + 1;
    /** A tile with a ring of one pixel for gradients. */
    static final int RING = SIDE + 2;

    private static final int SHIFT_X = 0;
    private static final int SHIFT_Y = 1;
    private static final int GAIN = 2;
    private static final int OFFSET = 3;
    private static final int BLUR = 4;
    private static final int BLUR_X = 5;
    private static final int BLUR_Y = 6;
    private static final int UNKNOWNS = 7;

    /**
     * How much of grad(D) shows as shift. 2 for weak blur; less for strong, whose higher terms count the other way. Measured
     * on rendered discs of 2 to 40 pixels diameter.
     */
    private static final double PULL = 1.4;

    /** Share of that shift that is not trusted. */
    private static final double PULL_DOUBT = 0.3;

    /** Residuals are correlated over about this many pixels (smoothing and interpolation). */
    private static final double CORRELATED = 4;

    /** What no tile is better than, level pixels: interpolation and aliasing. */
    private static final double FLOOR = 0.03;

    private static final float[] WINDOW = window();
    private static final double WINDOW_SUM = sum(WINDOW);

    private final float[] template;
    private final double[][] normal = new double[UNKNOWNS][UNKNOWNS + 1];
    private double[] solution = new double[UNKNOWNS];
    private double squares;
    private double gain = 1;

    /** @param template RING x RING samples of the first frame */
    TileFit(float[] template) {
        this.template = template;
    }

    /** One Gauss-Newton step against RING x RING samples of the second frame; false when the tile cannot hold it. */
    boolean step(float[] sampled) {
        accumulate(sampled);
        solution = SmallSolver.solve(normal);
        if (solution.length == 0 || solution[GAIN] <= 0) return false;
        gain = Math.min(2, Math.max(0.25, solution[GAIN]));
        return true;
    }

    double stepX() {
        return solution[SHIFT_X];
    }

    double stepY() {
        return solution[SHIFT_Y];
    }

    /** Shift that the slope of the blur only feigns, to be added to the one found. */
    double pullX() {
        return PULL * solution[BLUR_X] / RADIUS / gain;
    }

    double pullY() {
        return PULL * solution[BLUR_Y] / RADIUS / gain;
    }

    /** Zero-mean normalised cross-correlation of the explained and the seen tile. */
    double zncc() {
        double mean = normal[OFFSET][UNKNOWNS] / WINDOW_SUM;
        double total = squares - mean * normal[OFFSET][UNKNOWNS];
        return total <= 0 ? 0 : Math.sqrt(Math.max(0, 1 - residual() / total));
    }

    /** Covariance (xx, xy, yy) of the shift, squared level pixels; empty when the problem is singular. */
    double[] covariance() {
        double variance = residual() / WINDOW_SUM * CORRELATED;
        double[] x = SmallSolver.solve(SmallSolver.with(normal, unit(SHIFT_X)));
        double[] y = SmallSolver.solve(SmallSolver.with(normal, unit(SHIFT_Y)));
        if (x.length == 0 || y.length == 0) return new double[0];
        double doubt = PULL_DOUBT * PULL_DOUBT * (pullX() * pullX() + pullY() * pullY()) / 2;
        double floor = FLOOR * FLOOR + doubt;
        return new double[] {variance * x[0] + floor, variance * x[1], variance * y[1] + floor};
    }

    private double residual() {
        double explained = 0;
        for (int k = 0; k < UNKNOWNS; k++) explained += solution[k] * normal[k][UNKNOWNS];
        return Math.max(0, squares - explained);
    }

    private void accumulate(float[] sampled) {
        for (double[] row : normal) Arrays.fill(row, 0);
        squares = 0;
        for (int y = 0; y < SIDE; y++) addRow(sampled, y);
        for (int j = 1; j < UNKNOWNS; j++) for (int k = 0; k < j; k++) normal[j][k] = normal[k][j];
    }

    /**
     * One row of the tile. Both tiles lend half of every derivative (Benhimane and Malis 2004, Real-time image-based
     * tracking of planes using efficient second-order minimization): neither the sharper nor the softer one is preferred.
     */
    private void addRow(float[] sampled, int y) {
        double xx = 0, xy = 0, xt = 0, x1 = 0, xl = 0, xm = 0, xv = 0;
        double yy = 0, yt = 0, y1 = 0, yl = 0, ym = 0, yv = 0;
        double tt = 0, t1 = 0, tl = 0, tm = 0, tv = 0, ww = 0;
        double l1 = 0, m1 = 0, v1 = 0, ll = 0, lm = 0, mm = 0, lv = 0, mv = 0, vv = 0;
        float g = (float) gain;
        for (int x = 0; x < SIDE; x++) {
            int at = (y + 1) * RING + x + 1;
            double w = WINDOW[y * SIDE + x];
            float left = sampled[at - 1] + g * template[at - 1];
            float right = sampled[at + 1] + g * template[at + 1];
            float up = sampled[at - RING] + g * template[at - RING];
            float down = sampled[at + RING] + g * template[at + RING];
            float t = template[at];
            float v = sampled[at];
            double gx = 0.25 * (left - right);
            double gy = 0.25 * (up - down);
            double l = 0.5 * (left + right + up + down) - 2 * (v + g * t);
            double m = l * (x - RADIUS) / RADIUS;
            double wx = w * gx;
            double wy = w * gy;
            double wt = w * t;
            double wl = w * l;
            double wv = w * v;
            xx += wx * gx;
            xy += wx * gy;
            xt += wx * t;
            x1 += wx;
            xl += wx * l;
            xm += wx * m;
            xv += wx * v;
            yy += wy * gy;
            yt += wy * t;
            y1 += wy;
            yl += wy * l;
            ym += wy * m;
            yv += wy * v;
            tt += wt * t;
            t1 += wt;
            tl += wt * l;
            tm += wt * m;
            tv += wt * v;
            ww += w;
            l1 += wl;
            m1 += w * m;
            ll += wl * l;
            lm += wl * m;
            mm += w * m * m;
            lv += wl * v;
            mv += wv * m;
            v1 += wv;
            vv += wv * v;
        }
        double n = (double) (y - RADIUS) / RADIUS;
        add(SHIFT_X, xx, xy, xt, x1, xl, xm, n * xl, xv);
        add(SHIFT_Y, yy, yt, y1, yl, ym, n * yl, yv);
        add(GAIN, tt, t1, tl, tm, n * tl, tv);
        add(OFFSET, ww, l1, m1, n * l1, v1);
        add(BLUR, ll, lm, n * ll, lv);
        add(BLUR_X, mm, n * lm, mv);
        add(BLUR_Y, n * n * ll, n * lv);
        squares += vv;
    }

    /** Adds to a row of the normal equations, from the diagonal on. */
    private void add(int row, double... values) {
        for (int k = 0; k < values.length; k++) normal[row][row + k] += values[k];
    }

    private static double[] unit(int k) {
        double[] u = new double[UNKNOWNS];
        u[k] = 1;
        return u;
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

    private static double sum(float[] values) {
        double sum = 0;
        for (float v : values) sum += v;
        return sum;
    }
}
