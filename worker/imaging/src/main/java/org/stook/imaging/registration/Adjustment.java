package org.stook.imaging.registration;

import java.util.Arrays;
import java.util.List;
import org.stook.imaging.frame.Placement;

/**
 * All placements of a sweep at once, by robust least squares over the matches of all pairs (Triggs, McLauchlan, Hartley
 * and Fitzgibbon 2000, Bundle adjustment: a modern synthesis): neighbours alone would let errors add up along the chain.
 *
 * <p>Each iteration moves every frame by a small motion in its own normal coordinates. Weights are those of Geman and
 * McClure, their scale taken from each pair's own median, so that a pair that is all defocus counts for less.
 */
final class Adjustment {
    private static final int ITERATIONS = 12;
    private static final double CONVERGED = 1e-8;
    /** Median of chi-square with two degrees of freedom. */
    private static final double MEDIAN_CHI2 = 2 * Math.log(2);
    /** Squared errors beyond this many times the scale count for little. */
    /** However well the matches agree, they are not believed to be better than this. */
    private static final double LEAST_SCALE2 = 0.1;

    static final double CUT = 9;

    private final List<Pair> pairs;
    private final Placement[] placements;
    private final boolean[] held;
    private final int parameters;
    private final double[] scale2;

    /**
     * @param start one placement (reference to frame, normal coordinates) each, taken in the model's kind; those of held
     *     frames stay
     */
    Adjustment(List<Pair> pairs, List<Placement> start, boolean[] held, Model model) {
        this.pairs = pairs;
        this.placements =
                start.stream().map(p -> Generators.restricted(p, model)).toArray(Placement[]::new);
        this.held = held.clone();
        this.parameters = model.parameters();
        this.scale2 = new double[pairs.size()];
    }

    /** Iterates until the motions are negligible. @throws ArithmeticException when the matches do not hold the frames */
    Adjusted solve() {
        BandedCholesky system = null;
        for (int i = 0; i < ITERATIONS; i++) {
            rescale();
            double[] right = new double[placements.length * parameters];
            system = assemble(right);
            double[] step = system.solve(right);
            for (int f = 0; f < placements.length; f++) {
                if (held[f]) continue;
                placements[f] = placements[f].then(Generators.motion(step, f * parameters, parameters));
            }
            if (Arrays.stream(step).map(Math::abs).max().orElse(0) < CONVERGED) break;
        }
        rescale();
        return new Adjusted(
                List.of(placements), scale2.clone(), covariances(assemble(new double[placements.length * parameters])));
    }

    private void rescale() {
        for (int p = 0; p < pairs.size(); p++) {
            Pair pair = pairs.get(p);
            Placement map = between(pair);
            double[] chi2 = pair.matches().stream()
                    .mapToDouble(m -> chi2(map, m))
                    .sorted()
                    .toArray();
            scale2[p] = chi2.length == 0 ? 1 : Math.max(LEAST_SCALE2, chi2[chi2.length / 2] / MEDIAN_CHI2);
        }
    }

    private Placement between(Pair pair) {
        return placements[pair.first()].inverse().then(placements[pair.second()]);
    }

    static double chi2(Placement map, Match m) {
        return m.information().chi2(map.x(m.px(), m.py()) - m.qx(), map.y(m.px(), m.py()) - m.qy());
    }

    /** Weight of a squared error in units of its scale. */
    static double weight(double ratio) {
        double d = 1 + ratio / CUT;
        return 1 / (d * d);
    }

    private BandedCholesky assemble(double[] right) {
        int span = pairs.stream().mapToInt(p -> p.second() - p.first()).max().orElse(0);
        BandedCholesky system = new BandedCholesky(right.length, (span + 1) * parameters - 1);
        for (int p = 0; p < pairs.size(); p++) addPair(pairs.get(p), scale2[p], system, right);
        system.damp(1e-9, 1e-6);
        for (int f = 0; f < placements.length; f++) {
            if (!held[f]) continue;
            for (int k = 0; k < parameters; k++) {
                system.hold(f * parameters + k);
                right[f * parameters + k] = 0;
            }
        }
        system.factorise();
        return system;
    }

    private void addPair(Pair pair, double scale, BandedCholesky system, double[] right) {
        Placement map = between(pair);
        double[] gx = new double[8];
        double[] gy = new double[8];
        double[] jx = new double[2 * parameters];
        double[] jy = new double[2 * parameters];
        double[][] block = new double[2 * parameters][2 * parameters + 1];
        for (Match m : pair.matches()) {
            double x = map.x(m.px(), m.py());
            double y = map.y(m.px(), m.py());
            double ex = m.qx() - x;
            double ey = m.qy() - y;
            double w = weight(m.information().chi2(ex, ey) / scale) / scale;
            double h = 1e-4;
            double axx = (map.x(m.px() + h, m.py()) - x) / h;
            double ayx = (map.y(m.px() + h, m.py()) - y) / h;
            double axy = (map.x(m.px(), m.py() + h) - x) / h;
            double ayy = (map.y(m.px(), m.py() + h) - y) / h;
            Generators.at(m.px(), m.py(), gx, gy);
            for (int k = 0; k < parameters; k++) {
                jx[k] = -(axx * gx[k] + axy * gy[k]);
                jy[k] = -(ayx * gx[k] + ayy * gy[k]);
            }
            Generators.at(x, y, gx, gy);
            System.arraycopy(gx, 0, jx, parameters, parameters);
            System.arraycopy(gy, 0, jy, parameters, parameters);
            addMatch(block, jx, jy, w, m, ex, ey);
        }
        scatter(pair, block, system, right);
    }

    private static void addMatch(double[][] block, double[] jx, double[] jy, double w, Match m, double ex, double ey) {
        int n = jx.length;
        for (int a = 0; a < n; a++) {
            double wx = w * (m.information().xx() * jx[a] + m.information().xy() * jy[a]);
            double wy = w * (m.information().xy() * jx[a] + m.information().yy() * jy[a]);
            for (int b = 0; b <= a; b++) block[a][b] += wx * jx[b] + wy * jy[b];
            block[a][n] += wx * ex + wy * ey;
        }
    }

    private void scatter(Pair pair, double[][] block, BandedCholesky system, double[] right) {
        int n = 2 * parameters;
        for (int a = 0; a < n; a++) {
            int row = unknown(pair, a);
            right[row] += block[a][n];
            for (int b = 0; b <= a; b++) system.add(row, unknown(pair, b), block[a][b]);
        }
    }

    private int unknown(Pair pair, int k) {
        return k < parameters ? pair.first() * parameters + k : pair.second() * parameters + k - parameters;
    }

    /** The diagonal blocks of the inverse. */
    private double[][][] covariances(BandedCholesky system) {
        double[][][] result = new double[placements.length][parameters][];
        for (int f = 0; f < placements.length; f++) {
            for (int k = 0; k < parameters; k++) {
                double[] unit = new double[placements.length * parameters];
                unit[f * parameters + k] = 1;
                double[] column = system.solve(unit);
                result[f][k] = Arrays.copyOfRange(column, f * parameters, (f + 1) * parameters);
                if (held[f]) Arrays.fill(result[f][k], 0);
            }
        }
        return result;
    }
}
