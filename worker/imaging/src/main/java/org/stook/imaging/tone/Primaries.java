package org.stook.imaging.tone;

/**
 * Chromaticities (CIE 1931 x, y) of red, green, blue and white. Y of white is 1.
 */
@SuppressWarnings("ArrayRecordComponent") // constants, never compared
record Primaries(double[] red, double[] green, double[] blue, double[] white) {
    /** CIE illuminants as the standards below print them. */
    private static final double[] D65 = {0.3127, 0.3290};

    private static final double[] D50 = {0.3457, 0.3585};

    /** IEC 61966-2-1 (and ITU-R BT.709). */
    static final Primaries SRGB = of(0.64, 0.33, 0.30, 0.60, 0.15, 0.06, D65);
    /** Adobe RGB (1998) Color Image Encoding, version 2005-05; also IEC 61966-2-5. */
    static final Primaries ADOBE_RGB = of(0.64, 0.33, 0.21, 0.71, 0.15, 0.06, D65);
    /** SMPTE RP 431-2 primaries with D65 (SMPTE EG 432-1). */
    static final Primaries P3 = of(0.680, 0.320, 0.265, 0.690, 0.150, 0.060, D65);
    /** ISO 22028-2 (ROMM RGB). */
    static final Primaries ROMM = of(0.7347, 0.2653, 0.1596, 0.8404, 0.0366, 0.0001, D50);

    /** White of the ICC profile connection space (ICC.1:2022 section 7.2.16), as its 16-bit fractions are. */
    private static final double[] ICC_WHITE = {0xF6D6 / 65536.0, 1, 0xD32D / 65536.0};

    /** Cone responses of the linear Bradford transform (ICC.1:2022 annex E). */
    private static final Matrix BRADFORD =
            new Matrix(new double[] {0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296});

    private static Primaries of(double xr, double yr, double xg, double yg, double xb, double yb, double[] white) {
        return new Primaries(new double[] {xr, yr}, new double[] {xg, yg}, new double[] {xb, yb}, white);
    }

    /** X, Y, Z of white. */
    double[] whiteXyz() {
        return xyz(white);
    }

    /** Linear red, green, blue to X, Y, Z relative to this space's own white. */
    Matrix toXyz() {
        Matrix unscaled = Matrix.ofColumns(xyz(red), xyz(green), xyz(blue));
        double[] scale = unscaled.inverse().times(whiteXyz());
        return unscaled.times(Matrix.diagonal(scale[0], scale[1], scale[2]));
    }

    /** From X, Y, Z under this white to X, Y, Z under the white of the profile connection space. */
    Matrix adaptation() {
        double[] from = BRADFORD.times(whiteXyz());
        double[] to = BRADFORD.times(ICC_WHITE);
        Matrix scale = Matrix.diagonal(to[0] / from[0], to[1] / from[1], to[2] / from[2]);
        return BRADFORD.inverse().times(scale).times(BRADFORD);
    }

    private static double[] xyz(double[] xy) {
        return new double[] {xy[0] / xy[1], 1, (1 - xy[0] - xy[1]) / xy[1]};
    }
}
