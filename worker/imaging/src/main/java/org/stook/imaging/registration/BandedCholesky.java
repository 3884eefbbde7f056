package org.stook.imaging.registration;

import java.util.Arrays;

/**
 * Symmetric positive definite systems whose entries lie near the diagonal (Golub and Van Loan, Matrix Computations,
 * section on banded Cholesky): a chain of frames makes just those, and 200 frames would be slow as a full matrix.
 */
final class BandedCholesky {
    private final int size;
    private final int band;
    /** Row i holds columns i - band to i. */
    private final double[][] rows;

    BandedCholesky(int size, int band) {
        this.size = size;
        this.band = Math.min(band, size - 1);
        this.rows = new double[size][this.band + 1];
    }

    /** Adds to the entry (row, column) of the lower triangle. */
    void add(int row, int column, double value) {
        rows[row][column - row + band] += value;
    }

    /** Adds to every diagonal entry. */
    void damp(double relative, double absolute) {
        for (double[] row : rows) row[band] += relative * row[band] + absolute;
    }

    /** Replaces the row and column of an unknown by those of the unit matrix: it stays what it is. */
    void hold(int unknown) {
        Arrays.fill(rows[unknown], 0);
        rows[unknown][band] = 1;
        for (int r = unknown + 1; r < Math.min(size, unknown + band + 1); r++) rows[r][unknown - r + band] = 0;
    }

    /** Factorises in place. @throws ArithmeticException if the matrix is not positive definite */
    void factorise() {
        for (int i = 0; i < size; i++) {
            for (int j = Math.max(0, i - band); j <= i; j++) {
                double v = rows[i][j - i + band];
                for (int k = Math.max(0, i - band); k < j; k++) {
                    if (j - k <= band) v -= rows[i][k - i + band] * rows[j][k - j + band];
                }
                if (i == j && v <= 0) throw new ArithmeticException("matrix is not positive definite at row " + i);
                rows[i][j - i + band] = i == j ? Math.sqrt(v) : v / rows[j][band];
            }
        }
    }

    /** Solves with the factor for one right side. */
    double[] solve(double[] right) {
        double[] x = right.clone();
        for (int i = 0; i < size; i++) {
            for (int k = Math.max(0, i - band); k < i; k++) x[i] -= rows[i][k - i + band] * x[k];
            x[i] /= rows[i][band];
        }
        for (int i = size - 1; i >= 0; i--) {
            x[i] /= rows[i][band];
            for (int k = Math.max(0, i - band); k < i; k++) x[k] -= rows[i][k - i + band] * x[i];
        }
        return x;
    }
}
