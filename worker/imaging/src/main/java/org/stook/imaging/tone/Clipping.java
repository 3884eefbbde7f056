package org.stook.imaging.tone;

/**
 * How many samples the tones pushed over an end, of all samples of the frame (pixels x channels).
 *
 * @param low darker than black after exposure, white balance and black point
 * @param high lighter than white after exposure, white balance and white point
 * @param outOfGamut beyond an end only after saturation, mix or change of primaries
 * @param samples samples looked at
 */
public record Clipping(long low, long high, long outOfGamut, long samples) {
    public static final Clipping NONE = new Clipping(0, 0, 0, 0);

    public Clipping plus(Clipping other) {
        return new Clipping(low + other.low, high + other.high, outOfGamut + other.outOfGamut, samples + other.samples);
    }

    /** Share of clipped samples, 0 to 1. */
    public double share() {
        return samples == 0 ? 0 : (double) (low + high + outOfGamut) / samples;
    }
}
