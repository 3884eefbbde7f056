package org.stook.scenes.subject;

/** A studio light from above left, a weaker one from the right and some from all round. */
final class Light {
    private static final Vector KEY = new Vector(-0.55, -0.62, -0.56).unit();
    private static final Vector FILL = new Vector(0.75, 0.1, -0.65).unit();

    private Light() {}

    /** Light on a surface with depth slopes (dz/dx, dz/dy) in the same unit as x and y; about 0.15 to 1. */
    static double onSlope(double slopeX, double slopeY) {
        return onNormal(slopeX, slopeY, -1);
    }

    /** Light on a surface whose outward normal is (x, y, z), any length, z negative towards the camera. */
    static double onNormal(double x, double y, double z) {
        double length = Math.sqrt(x * x + y * y + z * z);
        double key = Math.max(0, (x * KEY.x() + y * KEY.y() + z * KEY.z()) / length);
        double fill = Math.max(0, (x * FILL.x() + y * FILL.y() + z * FILL.z()) / length);
        return 0.15 + 0.68 * key + 0.17 * fill;
    }
}
