package org.stook.scenes.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SensorNoiseTest {
    private static final SensorNoise NOISE = new SensorNoise(10_000, 8);

    /** Photon transfer: variance in electrons is the signal plus the read noise squared (Janesick). */
    @ParameterizedTest
    @ValueSource(floats = {0, 0.02f, 0.18f, 0.8f})
    void deviationMeasuredIsTheOneAskedFor(float light) {
        float[] samples = new float[200_000];
        Arrays.fill(samples, light);
        NOISE.addTo(samples, 0, samples.length, 42);
        double mean = 0;
        for (float s : samples) mean += s;
        mean /= samples.length;
        double square = 0;
        for (float s : samples) square += (s - mean) * (s - mean);
        double expected = Math.sqrt(light * 10_000 + 64) / 10_000;
        assertThat(Math.sqrt(square / samples.length)).isCloseTo(expected, within(0.01 * expected));
        assertThat(mean).isCloseTo(light, within(0.01 * expected));
    }

    /** Two-sided tails of the normal distribution: 31.73 % beyond 1, 4.55 % beyond 2 deviations (any statistical table). */
    @Test
    void tailsAreNormal() {
        Normal normal = new Normal(1);
        int beyondOne = 0;
        int beyondTwo = 0;
        for (int i = 0; i < 400_000; i++) {
            double v = Math.abs(normal.next());
            if (v > 1) beyondOne++;
            if (v > 2) beyondTwo++;
        }
        assertThat(beyondOne / 400_000.0).isCloseTo(0.3173, within(0.003));
        assertThat(beyondTwo / 400_000.0).isCloseTo(0.0455, within(0.0015));
    }

    @Test
    void noNoiseLeavesSamplesAlone() {
        float[] samples = {0.5f, 0.25f};
        SensorNoise.NONE.addTo(samples, 0, 2, 1);
        assertThat(samples).containsExactly(0.5f, 0.25f);
    }
}
