package org.stook.imaging.tone;

/**
 * Light to encoded value by table: entries equally spaced in the square root of light, where encoding curves are nearly
 * straight, and linear between them; before the first entry, where a pure power is steepest, by the curve itself. Within
 * 3e-6 of the curve for every space named in {@link ColourSpace} (a fifth of a 16-bit code; ROMM's break in slope is the
 * worst place).
 */
final class EncodingTable {
    private static final int STEPS = 1 << 15;

    private final TransferCurve curve;
    private final float[] encoded = new float[STEPS + 2];

    EncodingTable(TransferCurve curve) {
        this.curve = curve;
        for (int i = 0; i <= STEPS; i++) {
            double root = (double) i / STEPS;
            encoded[i] = (float) curve.fromLight(root * root);
        }
        encoded[STEPS + 1] = encoded[STEPS];
    }

    /** @param light 0 to 1 */
    float encode(double light) {
        double at = Math.sqrt(light) * STEPS;
        int i = (int) at;
        if (i == 0 && light > 0) return (float) curve.fromLight(light);
        float low = encoded[i];
        return low + (float) (at - i) * (encoded[i + 1] - low);
    }
}
