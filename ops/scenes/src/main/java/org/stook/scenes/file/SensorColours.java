package org.stook.scenes.file;

/**
 * How the sensor of the invented camera sees colour: its filters mix the primaries of linear sRGB, and under the studio's
 * light red and blue count less than green.
 */
final class SensorColours {
    /** Filter by primary; each row adds up to 1, so that grey is grey. */
    private static final double[][] FILTERS = {{0.84, 0.16, 0}, {0.08, 0.80, 0.12}, {0.02, 0.14, 0.84}};
    /** What a neutral surface counts, against green. */
    private static final double[] NEUTRAL = {0.5, 1, 0.625};
    /** XYZ to linear sRGB (IEC 61966-2-1). */
    private static final double[][] FROM_XYZ = {
        {3.2406, -1.5372, -0.4986}, {-0.9689, 1.8758, 0.0415}, {0.0557, -0.2040, 1.0570}
    };

    private SensorColours() {}

    /** What filter {@code colour} (0 red, 1 green, 2 blue) lets through of this light, against its full count: 0 to 1. */
    static double count(int colour, double red, double green, double blue) {
        double[] filter = FILTERS[colour];
        double light = filter[0] * red + filter[1] * green + filter[2] * blue;
        return Math.min(1, NEUTRAL[colour] * light);
    }

    /** DNG's AsShotNeutral: numerators and denominators. */
    static Long[] neutral() {
        return rationals(NEUTRAL);
    }

    /** DNG's ColorMatrix1: XYZ to what the filters see, row by row; numerators and denominators. */
    static Long[] matrix() {
        double[] matrix = new double[9];
        for (int row = 0; row < 3; row++) {
            for (int column = 0; column < 3; column++) {
                for (int k = 0; k < 3; k++) matrix[3 * row + column] += FILTERS[row][k] * FROM_XYZ[k][column];
            }
        }
        return rationals(matrix);
    }

    private static Long[] rationals(double[] values) {
        Long[] written = new Long[2 * values.length];
        for (int i = 0; i < values.length; i++) {
            written[2 * i] = Math.round(values[i] * 1_000_000);
            written[2 * i + 1] = 1_000_000L;
        }
        return written;
    }
}
