package org.stook.comparison.metrics;

/**
 * A spatial frequency response.
 *
 * @param step cycles per pixel between neighbouring entries
 * @param response 1 at frequency 0, the first entry
 */
public record FrequencyResponse(double step, double[] response) {
    /** Half of the sampling frequency, cycles per pixel. */
    private static final double NYQUIST = 0.5;

    /** SFR50: the lowest frequency (cycles per pixel) at which the response falls to one half; NaN if it never does. */
    public double half() {
        for (int i = 1; i < response.length; i++) {
            if (response[i] < 0.5) {
                return step * (i - 1 + (response[i - 1] - 0.5) / (response[i - 1] - response[i]));
            }
        }
        return Double.NaN;
    }

    /** The greatest response from 0 to half of the sampling frequency; above 1 the edge has been sharpened. */
    public double greatest() {
        double greatest = 0;
        for (int i = 0; i * step <= NYQUIST + 1e-9; i++) greatest = Math.max(greatest, response[i]);
        return greatest;
    }

    /** The response at a frequency between two entries, linearly. */
    public double at(double cyclesPerPixel) {
        double place = cyclesPerPixel / step;
        int i = (int) Math.min(place, response.length - 2.0);
        return response[i] + (place - i) * (response[i + 1] - response[i]);
    }
}
