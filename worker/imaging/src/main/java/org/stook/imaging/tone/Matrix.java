package org.stook.imaging.tone;

import java.util.Arrays;

/** A 3 x 3 matrix, row-major. */
@SuppressWarnings("ArrayRecordComponent") // equality is spelled out below
record Matrix(double[] m) {
    static final Matrix IDENTITY = new Matrix(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1});

    static Matrix ofColumns(double[] first, double[] second, double[] third) {
        return new Matrix(new double[] {
            first[0], second[0], third[0], first[1], second[1], third[1], first[2], second[2], third[2]
        });
    }

    static Matrix diagonal(double x, double y, double z) {
        return new Matrix(new double[] {x, 0, 0, 0, y, 0, 0, 0, z});
    }

    /** This after {@code first}. */
    Matrix times(Matrix first) {
        double[] out = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                out[3 * i + j] = m[3 * i] * first.m[j] + m[3 * i + 1] * first.m[3 + j] + m[3 * i + 2] * first.m[6 + j];
            }
        }
        return new Matrix(out);
    }

    double[] times(double... v) {
        double[] out = new double[3];
        for (int i = 0; i < 3; i++) out[i] = m[3 * i] * v[0] + m[3 * i + 1] * v[1] + m[3 * i + 2] * v[2];
        return out;
    }

    double determinant() {
        return m[0] * (m[4] * m[8] - m[5] * m[7])
                + m[1] * (m[5] * m[6] - m[3] * m[8])
                + m[2] * (m[3] * m[7] - m[4] * m[6]);
    }

    Matrix inverse() {
        double det = determinant();
        return new Matrix(new double[] {
            (m[4] * m[8] - m[5] * m[7]) / det,
            (m[2] * m[7] - m[1] * m[8]) / det,
            (m[1] * m[5] - m[2] * m[4]) / det,
            (m[5] * m[6] - m[3] * m[8]) / det,
            (m[0] * m[8] - m[2] * m[6]) / det,
            (m[2] * m[3] - m[0] * m[5]) / det,
            (m[3] * m[7] - m[4] * m[6]) / det,
            (m[1] * m[6] - m[0] * m[7]) / det,
            (m[0] * m[4] - m[1] * m[3]) / det
        });
    }

    double at(int row, int column) {
        return m[3 * row + column];
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Matrix that && Arrays.equals(m, that.m);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(m);
    }

    @Override
    public String toString() {
        return "Matrix" + Arrays.toString(m);
    }
}
