package org.stook.imaging.survey;

import java.util.Arrays;
import java.util.List;
import org.stook.imaging.frame.Plane;

/**
 * How much the scale of the picture changes over a sweep, from the frames' thumbnails alone. Between neighbours it is so little
 * that one linear step is enough (Lucas and Kanade 1981, An iterative image registration technique): level, contrast, blur (the
 * Laplacian), shift and scale are fitted at once.
 */
final class Breathing {
    private static final int UNKNOWNS = 6;
    private static final int SCALE = 3;
    private static final int ROUNDS = 5;
    /** More from one frame to the next is no breathing. */
    private static final double MOST = 0.05;

    private Breathing() {}

    /**
     * @param thumbnails in focus order
     * @return the largest scale over the smallest, less 1
     */
    static double of(List<Plane> thumbnails) {
        double scale = 0;
        double least = 0;
        double most = 0;
        for (int i = 0; i + 1 < thumbnails.size(); i++) {
            scale += between(thumbnails.get(i), thumbnails.get(i + 1));
            least = Math.min(least, scale);
            most = Math.max(most, scale);
        }
        return Math.expm1(most - least);
    }

    /** By how much the second picture is larger than the first; 0 where that cannot be told. */
    static double between(Plane first, Plane second) {
        double[][] rows = rows(smooth(smooth(first)), smooth(smooth(second)));
        double[] weights = new double[rows.length];
        Arrays.fill(weights, 1);
        double[] fit = new double[UNKNOWNS];
        for (int round = 0; round < ROUNDS; round++) {
            fit = solve(normal(rows, weights));
            weigh(rows, fit, weights);
        }
        return Math.abs(fit[SCALE]) <= MOST ? fit[SCALE] : 0;
    }

    /** For every pixel what each unknown does to it, then what it is. */
    private static double[][] rows(Plane a, Plane b) {
        int w = a.width() - 2;
        double centreX = (a.width() - 1) / 2.0;
        double centreY = (a.height() - 1) / 2.0;
        double[][] rows = new double[w * (a.height() - 2)][];
        for (int i = 0; i < rows.length; i++) {
            int x = 1 + i % w;
            int y = 1 + i / w;
            double dx = 0.25 * (a.at(x + 1, y) - a.at(x - 1, y) + b.at(x + 1, y) - b.at(x - 1, y));
            double dy = 0.25 * (a.at(x, y + 1) - a.at(x, y - 1) + b.at(x, y + 1) - b.at(x, y - 1));
            double bend = a.at(x + 1, y) + a.at(x - 1, y) + a.at(x, y + 1) + a.at(x, y - 1) - 4 * a.at(x, y);
            double swell = -(dx * (x - centreX) + dy * (y - centreY));
            rows[i] = new double[] {a.at(x, y), 1, bend, swell, -dx, -dy, b.at(x, y)};
        }
        return rows;
    }

    private static double[][] normal(double[][] rows, double[] weights) {
        double[][] normal = new double[UNKNOWNS][UNKNOWNS + 1];
        for (int r = 0; r < rows.length; r++) {
            double[] row = rows[r];
            for (int i = 0; i < UNKNOWNS; i++) {
                for (int j = 0; j <= UNKNOWNS; j++) normal[i][j] += weights[r] * row[i] * row[j];
            }
        }
        return normal;
    }

    /** Places whose blur changes otherwise than the rest count for less (Cauchy's weight). */
    private static void weigh(double[][] rows, double[] fit, double[] weights) {
        double[] errors = new double[rows.length];
        for (int r = 0; r < rows.length; r++) {
            double error = rows[r][UNKNOWNS];
            for (int i = 0; i < UNKNOWNS; i++) error -= fit[i] * rows[r][i];
            errors[r] = Math.abs(error);
        }
        double usual = Math.max(1e-9, 1.5 * Seriation.median(errors.clone()));
        for (int r = 0; r < rows.length; r++) weights[r] = 1 / (1 + errors[r] * errors[r] / (usual * usual));
    }

    /** (1 2 1)/4 both ways. Differences of neighbours are gradients only where nothing is finer than a few pixels. */
    private static Plane smooth(Plane in) {
        int w = in.width();
        int h = in.height();
        Plane out = new Plane(w, h);
        for (int y = 0; y < h; y++) {
            for (int x = 0; x < w; x++) {
                double sum = 0;
                for (int j = -1; j <= 1; j++) {
                    for (int i = -1; i <= 1; i++) {
                        float v = in.at(Math.max(0, Math.min(w - 1, x + i)), Math.max(0, Math.min(h - 1, y + j)));
                        sum += v * (2 - Math.abs(i)) * (2 - Math.abs(j));
                    }
                }
                out.set(x, y, (float) (sum / 16));
            }
        }
        return out;
    }

    /** Gauss and Jordan with pivots; what is not determined is 0. */
    private static double[] solve(double[][] rows) {
        int n = rows.length;
        double[] result = new double[n];
        for (int c = 0; c < n; c++) {
            int best = c;
            for (int r = c + 1; r < n; r++) if (Math.abs(rows[r][c]) > Math.abs(rows[best][c])) best = r;
            double[] pivot = rows[best];
            rows[best] = rows[c];
            rows[c] = pivot;
            if (Math.abs(pivot[c]) < 1e-12) return result;
            for (int r = 0; r < n; r++) {
                double factor = rows[r][c] / pivot[c];
                if (r != c) for (int k = c; k <= n; k++) rows[r][k] -= factor * pivot[k];
            }
        }
        for (int c = 0; c < n; c++) result[c] = rows[c][n] / rows[c][c];
        return result;
    }
}
