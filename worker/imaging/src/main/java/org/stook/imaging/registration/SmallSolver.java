package org.stook.imaging.registration;

/** Gauss elimination with pivoting for the four unknowns of a tile. */
final class SmallSolver {
    private SmallSolver() {}

    /** Solves rows of n coefficients and a right side; empty when singular. */
    static double[] solve(double[][] rows) {
        int n = rows.length;
        double[][] a = new double[n][];
        for (int i = 0; i < n; i++) a[i] = rows[i].clone();
        for (int c = 0; c < n; c++) {
            int pivot = c;
            for (int r = c + 1; r < n; r++) if (Math.abs(a[r][c]) > Math.abs(a[pivot][c])) pivot = r;
            double[] swap = a[c];
            a[c] = a[pivot];
            a[pivot] = swap;
            if (Math.abs(a[c][c]) < 1e-12) return new double[0];
            for (int r = c + 1; r < n; r++) {
                double f = a[r][c] / a[c][c];
                for (int k = c; k <= n; k++) a[r][k] -= f * a[c][k];
            }
        }
        double[] x = new double[n];
        for (int r = n - 1; r >= 0; r--) {
            double v = a[r][n];
            for (int k = r + 1; k < n; k++) v -= a[r][k] * x[k];
            x[r] = v / a[r][r];
        }
        return x;
    }

    /** The same coefficients with another right side. */
    static double[][] with(double[][] rows, double[] right) {
        double[][] a = new double[rows.length][];
        for (int i = 0; i < a.length; i++) {
            a[i] = rows[i].clone();
            a[i][a[i].length - 1] = right[i];
        }
        return a;
    }
}
