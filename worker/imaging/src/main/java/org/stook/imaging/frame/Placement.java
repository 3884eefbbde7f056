package org.stook.imaging.frame;

import java.util.Arrays;

/**
 * Where a frame lies: the 3 x 3 projective map from reference pixels to pixels of that frame, row-major, pixel centres
 * at integers. {@code frame ~ M * (x, y, 1)}; kept with M[8] = 1.
 */
public final class Placement {
    private static final Placement IDENTITY = new Placement(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1});

    private final double[] m;

    private Placement(double[] m) {
        this.m = m;
    }

    /** @throws IllegalArgumentException unless nine finite numbers are given and the last is not zero */
    public static Placement of(double... rowMajor) {
        if (rowMajor.length != 9 || !Arrays.stream(rowMajor).allMatch(Double::isFinite) || rowMajor[8] == 0) {
            throw new IllegalArgumentException(
                    "a placement is nine finite numbers, the last not zero, got " + Arrays.toString(rowMajor));
        }
        return new Placement(Arrays.stream(rowMajor).map(v -> v / rowMajor[8]).toArray());
    }

    public static Placement identity() {
        return IDENTITY;
    }

    /** {@code x' = a x + b y + tx, y' = c x + d y + ty}. */
    public static Placement affine(double a, double b, double tx, double c, double d, double ty) {
        return of(a, b, tx, c, d, ty, 0, 0, 1);
    }

    /** Turn by {@code radians} and enlarge by {@code scale} about (cx, cy), then shift by (tx, ty) pixels. */
    public static Placement similarity(double scale, double radians, double tx, double ty, double cx, double cy) {
        double a = scale * Math.cos(radians);
        double b = scale * Math.sin(radians);
        return affine(a, -b, cx + tx - a * cx + b * cy, b, a, cy + ty - b * cx - a * cy);
    }

    /** Frame column under reference point (x, y). */
    public double x(double x, double y) {
        return (m[0] * x + m[1] * y + m[2]) / (m[6] * x + m[7] * y + m[8]);
    }

    /** Frame row under reference point (x, y). */
    public double y(double x, double y) {
        return (m[3] * x + m[4] * y + m[5]) / (m[6] * x + m[7] * y + m[8]);
    }

    /** First this, then {@code next}: the map p -> next(this(p)). */
    public Placement then(Placement next) {
        double[] r = new double[9];
        for (int i = 0; i < 3; i++) {
            for (int j = 0; j < 3; j++) {
                r[3 * i + j] = next.m[3 * i] * m[j] + next.m[3 * i + 1] * m[3 + j] + next.m[3 * i + 2] * m[6 + j];
            }
        }
        return of(r);
    }

    /** @throws ArithmeticException if the map cannot be inverted */
    public Placement inverse() {
        double c0 = m[4] * m[8] - m[5] * m[7];
        double c1 = m[5] * m[6] - m[3] * m[8];
        double c2 = m[3] * m[7] - m[4] * m[6];
        double det = m[0] * c0 + m[1] * c1 + m[2] * c2;
        if (Math.abs(det) < 1e-12) throw new ArithmeticException("placement cannot be inverted: " + this);
        return of(
                c0,
                m[2] * m[7] - m[1] * m[8],
                m[1] * m[5] - m[2] * m[4],
                c1,
                m[0] * m[8] - m[2] * m[6],
                m[2] * m[3] - m[0] * m[5],
                c2,
                m[1] * m[6] - m[0] * m[7],
                m[0] * m[4] - m[1] * m[3]);
    }

    /**
     * The same placement between images both reduced by the whole factor {@code n}, each reduced pixel being the mean
     * of n x n pixels (so reduced pixel i lies at full pixel {@code n i + (n - 1) / 2}).
     */
    public Placement reducedBy(int n) {
        double o = (n - 1) / 2.0;
        Placement up = affine(n, 0, o, 0, n, o);
        return up.then(this).then(up.inverse());
    }

    /** Area ratio of frame pixels to reference pixels around (x, y), as a linear scale. */
    public double scaleAt(double x, double y) {
        double w = m[6] * x + m[7] * y + m[8];
        double px = x(x, y);
        double py = y(x, y);
        double dxx = (m[0] - px * m[6]) / w;
        double dxy = (m[1] - px * m[7]) / w;
        double dyx = (m[3] - py * m[6]) / w;
        double dyy = (m[4] - py * m[7]) / w;
        return Math.sqrt(Math.abs(dxx * dyy - dxy * dyx));
    }

    /** Nine numbers, row-major; a copy. */
    public double[] toArray() {
        return m.clone();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof Placement p && Arrays.equals(m, p.m);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(m);
    }

    @Override
    public String toString() {
        return "Placement" + Arrays.toString(m);
    }
}
