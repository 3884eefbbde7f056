package org.stook.scenes.optics;

/**
 * Noise of a sensor in linear light: shot noise (variance equal to the electrons counted) and read noise, normally
 * distributed (J. Janesick, "Photon Transfer", SPIE Press 2007).
 *
 * @param fullWell electrons at linear light 1; 0 for no noise at all
 * @param readElectrons standard deviation of the read noise in electrons
 */
public record SensorNoise(double fullWell, double readElectrons) {
    /** No noise. */
    public static final SensorNoise NONE = new SensorNoise(0, 0);
    /** About what a full-frame camera shows at a low sensitivity. */
    public static final SensorNoise CLEAN = new SensorNoise(40_000, 5);

    public SensorNoise {
        if (!(fullWell >= 0) || !(readElectrons >= 0)) {
            throw new IllegalArgumentException(
                    "electrons cannot be negative, got " + fullWell + " and " + readElectrons);
        }
    }

    /** Standard deviation, in linear light, at this light. */
    public double deviation(double linear) {
        return fullWell == 0 ? 0 : Math.sqrt(Math.max(0, linear) * fullWell + readElectrons * readElectrons) / fullWell;
    }

    /** Adds noise to a row of samples; the same row and number give the same noise. */
    public void addTo(float[] samples, int from, int to, long number) {
        if (fullWell == 0) return;
        Normal normal = new Normal(number);
        for (int i = from; i < to; i++) samples[i] += (float) (deviation(samples[i]) * normal.next());
    }
}
