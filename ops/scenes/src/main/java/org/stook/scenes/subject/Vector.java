package org.stook.scenes.subject;

/** A point or direction in space: picture heights, z away from the viewer. */
record Vector(double x, double y, double z) {
    double dot(Vector other) {
        return x * other.x + y * other.y + z * other.z;
    }

    Vector cross(Vector other) {
        return new Vector(y * other.z - z * other.y, z * other.x - x * other.z, x * other.y - y * other.x);
    }

    Vector scaled(double by) {
        return new Vector(x * by, y * by, z * by);
    }

    /** This and {@code other} so many times. */
    Vector plus(Vector other, double times) {
        return new Vector(x + other.x * times, y + other.y * times, z + other.z * times);
    }

    Vector unit() {
        return scaled(1 / Math.sqrt(dot(this)));
    }
}
