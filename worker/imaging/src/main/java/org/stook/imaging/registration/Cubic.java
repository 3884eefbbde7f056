package org.stook.imaging.registration;

import org.stook.imaging.frame.Plane;

/** Cubic convolution with a = -1/2 (Keys 1981, Cubic convolution interpolation for digital image processing). */
final class Cubic {
    private Cubic() {}

    /** Value at (x, y), which must lie at least one pixel inside to the left and top and two to the right and bottom. */
    static float at(Plane plane, double x, double y) {
        int ix = (int) x;
        int iy = (int) y;
        float fx = (float) (x - ix);
        float fy = (float) (y - iy);
        float a0 = ((-0.5f * fx + 1) * fx - 0.5f) * fx;
        float a1 = (1.5f * fx - 2.5f) * fx * fx + 1;
        float a2 = ((-1.5f * fx + 2) * fx + 0.5f) * fx;
        float a3 = (0.5f * fx - 0.5f) * fx * fx;
        int w = plane.width();
        float[] s = plane.samples();
        int i = (iy - 1) * w + ix - 1;
        float r0 = a0 * s[i] + a1 * s[i + 1] + a2 * s[i + 2] + a3 * s[i + 3];
        i += w;
        float r1 = a0 * s[i] + a1 * s[i + 1] + a2 * s[i + 2] + a3 * s[i + 3];
        i += w;
        float r2 = a0 * s[i] + a1 * s[i + 1] + a2 * s[i + 2] + a3 * s[i + 3];
        i += w;
        float r3 = a0 * s[i] + a1 * s[i + 1] + a2 * s[i + 2] + a3 * s[i + 3];
        float b0 = ((-0.5f * fy + 1) * fy - 0.5f) * fy;
        float b1 = (1.5f * fy - 2.5f) * fy * fy + 1;
        float b2 = ((-1.5f * fy + 2) * fy + 0.5f) * fy;
        float b3 = (0.5f * fy - 0.5f) * fy * fy;
        return b0 * r0 + b1 * r1 + b2 * r2 + b3 * r3;
    }
}
