package org.stook.scenes.subject;

/** Three numbers as a vector. */
final class Vectors {
    private Vectors() {}

    static double dot(double[] a, double[] b) {
        return a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
    }

    static double[] cross(double[] a, double[] b) {
        return new double[] {a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]};
    }

    static double[] scaled(double[] a, double by) {
        return new double[] {a[0] * by, a[1] * by, a[2] * by};
    }

    /** {@code a + b * times}. */
    static double[] plus(double[] a, double[] b, double times) {
        return new double[] {a[0] + b[0] * times, a[1] + b[1] * times, a[2] + b[2] * times};
    }

    static double[] unit(double[] a) {
        return scaled(a, 1 / Math.sqrt(dot(a, a)));
    }
}
