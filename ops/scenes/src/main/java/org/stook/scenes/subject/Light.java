package org.stook.scenes.subject;

/** A studio light from above left, a weaker one from the right and some from all round. */
final class Light {
    private static final double[] KEY = unit(-0.55, -0.62, -0.56);
    private static final double[] FILL = unit(0.75, 0.1, -0.65);

    private Light() {}

    /** Light on a surface with depth slopes (dz/dx, dz/dy) in the same unit as x and y; about 0.15 to 1. */
    static double onSlope(double slopeX, double slopeY) {
        return onNormal(slopeX, slopeY, -1);
    }

    /** Light on a surface whose outward normal is (x, y, z), any length, z negative towards the camera. */
    static double onNormal(double x, double y, double z) {
        double length = Math.sqrt(x * x + y * y + z * z);
        double key = Math.max(0, (x * KEY[0] + y * KEY[1] + z * KEY[2]) / length);
        double fill = Math.max(0, (x * FILL[0] + y * FILL[1] + z * FILL[2]) / length);
        return 0.15 + 0.68 * key + 0.17 * fill;
    }

    private static double[] unit(double x, double y, double z) {
        double length = Math.sqrt(x * x + y * y + z * z);
        return new double[] {x / length, y / length, z / length};
    }
}
