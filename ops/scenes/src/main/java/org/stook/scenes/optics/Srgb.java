package org.stook.scenes.optics;

/** The encoding of IEC 61966-2-1 (sRGB) and its inverse. */
public final class Srgb {
    private static final int CELLS = 65536;
    private static final float[] TABLE = new float[CELLS + 2];

    static {
        for (int i = 0; i < TABLE.length; i++) TABLE[i] = (float) exact((double) i / CELLS);
    }

    private Srgb() {}

    /** Linear light to the encoded value, both 0 to 1; light beyond is clipped. Within 1e-6 of the standard. */
    public static float encode(double linear) {
        if (!(linear > 0)) return 0;
        if (linear >= 1) return 1;
        double at = linear * CELLS;
        int cell = (int) at;
        double share = at - cell;
        return (float) (TABLE[cell] + share * (TABLE[cell + 1] - TABLE[cell]));
    }

    /** Encoded value to linear light, both 0 to 1. */
    public static double decode(double encoded) {
        return encoded <= 0.04045 ? encoded / 12.92 : StrictMath.pow((encoded + 0.055) / 1.055, 2.4);
    }

    private static double exact(double linear) {
        return linear <= 0.0031308 ? 12.92 * linear : 1.055 * StrictMath.pow(linear, 1 / 2.4) - 0.055;
    }
}
