package org.stook.scenes.subject;

import java.util.SplittableRandom;

/**
 * Band-limited noise: random numbers on a lattice, joined by cubic B-splines. Its spectrum falls as sinc^4, so hardly
 * anything lies above 0.6 cycles a lattice cell (Unser, "Splines: a perfect fit for signal and image processing", IEEE
 * Signal Processing Magazine 16(6), 1999).
 */
final class Grain {
    /** Lattice cell in pixels that keeps the noise under about 0.35 cycles a pixel. */
    static final double FINEST = 1.7;

    private static final int SIZE = 1024;
    private static final int MASK = SIZE - 1;
    /** Brings the spline of uniform numbers in -1..1 to a standard deviation of 1: sqrt(3) / (151 / 315). */
    private static final double TO_UNIT = Math.sqrt(3) * 315 / 151;

    private final float[] lattice = new float[SIZE * SIZE];

    Grain(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < lattice.length; i++) {
            lattice[i] = (float) ((2 * random.nextDouble() - 1) * TO_UNIT);
        }
    }

    /** Noise of mean 0 and standard deviation 1 at a point given in lattice cells. */
    double at(double x, double y) {
        double fx = Math.floor(x);
        double fy = Math.floor(y);
        double tx = x - fx;
        double ty = y - fy;
        int ix = (int) fx - 1;
        int iy = (int) fy - 1;
        int c0 = ix & MASK;
        int c1 = (ix + 1) & MASK;
        int c2 = (ix + 2) & MASK;
        int c3 = (ix + 3) & MASK;
        double ux = 1 - tx;
        double w0 = ux * ux * ux / 6;
        double w3 = tx * tx * tx / 6;
        double w1 = 2.0 / 3 - tx * tx * (1 - tx / 2);
        double w2 = 1 - w0 - w1 - w3;
        double uy = 1 - ty;
        double v0 = uy * uy * uy / 6;
        double v3 = ty * ty * ty / 6;
        double v1 = 2.0 / 3 - ty * ty * (1 - ty / 2);
        double v2 = 1 - v0 - v1 - v3;
        int r0 = (iy & MASK) * SIZE;
        int r1 = ((iy + 1) & MASK) * SIZE;
        int r2 = ((iy + 2) & MASK) * SIZE;
        int r3 = ((iy + 3) & MASK) * SIZE;
        float[] a = lattice;
        return v0 * (w0 * a[r0 + c0] + w1 * a[r0 + c1] + w2 * a[r0 + c2] + w3 * a[r0 + c3])
                + v1 * (w0 * a[r1 + c0] + w1 * a[r1 + c1] + w2 * a[r1 + c2] + w3 * a[r1 + c3])
                + v2 * (w0 * a[r2 + c0] + w1 * a[r2 + c1] + w2 * a[r2 + c2] + w3 * a[r2 + c3])
                + v3 * (w0 * a[r3 + c0] + w1 * a[r3 + c1] + w2 * a[r3 + c2] + w3 * a[r3 + c3]);
    }

    /** Value and slopes (per lattice cell) at a point: sets {@code into} to the value, d/dx and d/dy. */
    void withSlopes(double x, double y, double[] into) {
        double fx = Math.floor(x);
        double fy = Math.floor(y);
        double t = x - fx;
        double u = 1 - t;
        double w0 = u * u * u / 6;
        double w3 = t * t * t / 6;
        double w1 = 2.0 / 3 - t * t * (1 - t / 2);
        double w2 = 1 - w0 - w1 - w3;
        double e0 = -u * u / 2;
        double e1 = t * (1.5 * t - 2);
        double e2 = -u * (1.5 * u - 2);
        double e3 = t * t / 2;
        int c0 = ((int) fx - 1) & MASK;
        int c1 = (int) fx & MASK;
        int c2 = ((int) fx + 1) & MASK;
        int c3 = ((int) fx + 2) & MASK;
        double ty = y - fy;
        into[0] = 0;
        into[1] = 0;
        into[2] = 0;
        for (int row = 0; row < 4; row++) {
            int base = (((int) fy - 1 + row) & MASK) * SIZE;
            float a0 = lattice[base + c0];
            float a1 = lattice[base + c1];
            float a2 = lattice[base + c2];
            float a3 = lattice[base + c3];
            double value = w0 * a0 + w1 * a1 + w2 * a2 + w3 * a3;
            double weight = weight(row, ty);
            into[0] += weight * value;
            into[1] += weight * (e0 * a0 + e1 * a1 + e2 * a2 + e3 * a3);
            into[2] += slope(row, ty) * value;
        }
    }

    /** Weight of the lattice point {@code k}, the second of the four being the one before the fraction t. */
    private static double weight(int k, double t) {
        double u = 1 - t;
        return switch (k) {
            case 0 -> u * u * u / 6;
            case 1 -> 2.0 / 3 - t * t * (1 - t / 2);
            case 2 -> 2.0 / 3 - u * u * (1 - u / 2);
            default -> t * t * t / 6;
        };
    }

    /** Its derivative. */
    private static double slope(int k, double t) {
        double u = 1 - t;
        return switch (k) {
            case 0 -> -u * u / 2;
            case 1 -> t * (1.5 * t - 2);
            case 2 -> -u * (1.5 * u - 2);
            default -> t * t / 2;
        };
    }
}
