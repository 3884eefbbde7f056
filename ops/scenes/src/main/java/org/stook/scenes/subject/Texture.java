package org.stook.scenes.subject;

/** Grain at several scales, each twice as coarse as the one before and turned against it. Standard deviation 1. */
final class Texture {
    private static final double TURN = 2.399963229728653; // the golden angle: no two scales share a direction

    private final Grain grain;
    private final double[] cos;
    private final double[] sin;
    private final double[] weight;
    private final double offset;

    /**
     * @param grain shared lattice
     * @param finest least lattice cell, in picture heights
     * @param coarsest greatest lattice cell, in picture heights
     * @param growth weight of a scale against the next finer one: over 1 gives cloudy, under 1 gives sandy texture
     * @param offset moves the pattern, so that textures on one lattice differ
     */
    Texture(Grain grain, double finest, double coarsest, double growth, double offset) {
        int octaves = 1 + (int) Math.max(0, Math.floor(StrictMath.log(coarsest / finest) / StrictMath.log(2)));
        this.grain = grain;
        this.offset = offset;
        cos = new double[octaves];
        sin = new double[octaves];
        weight = new double[octaves];
        double power = 0;
        double cell = finest;
        for (int k = 0; k < octaves; k++, cell *= 2) {
            cos[k] = StrictMath.cos(k * TURN) / cell;
            sin[k] = StrictMath.sin(k * TURN) / cell;
            weight[k] = StrictMath.pow(growth, k);
            power += weight[k] * weight[k];
        }
        for (int k = 0; k < octaves; k++) weight[k] /= Math.sqrt(power);
    }

    double at(double x, double y) {
        double sum = 0;
        for (int k = 0; k < weight.length; k++) {
            double shift = offset + 97.3 * k;
            sum += weight[k] * grain.at(x * cos[k] - y * sin[k] + shift, x * sin[k] + y * cos[k] - shift);
        }
        return sum;
    }

    /** Value and slopes: sets {@code into} to the value, d/dx and d/dy. */
    void withSlopes(double x, double y, double[] into) {
        double value = 0;
        double slopeX = 0;
        double slopeY = 0;
        for (int k = 0; k < weight.length; k++) {
            double shift = offset + 97.3 * k;
            grain.withSlopes(x * cos[k] - y * sin[k] + shift, x * sin[k] + y * cos[k] - shift, into);
            value += weight[k] * into[0];
            slopeX += weight[k] * (into[1] * cos[k] + into[2] * sin[k]);
            slopeY += weight[k] * (into[2] * cos[k] - into[1] * sin[k]);
        }
        into[0] = value;
        into[1] = slopeX;
        into[2] = slopeY;
    }
}
