package org.stook.comparison.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/**
 * Closed form: a step blurred by a Gaussian of s px and seen by pixels that are points has the response exp(-2 pi^2 s^2 f^2), hence
 * SFR50 = sqrt(ln 2 / 2) / (pi s) (Fourier transform of the Gaussian, any handbook).
 */
class SlantedEdgeTest {
    @ParameterizedTest
    @CsvSource({"0.6, 5, false", "0.8, 5, true", "1.2, 3, false", "2.0, 8, false"})
    void measuresTheResponseOfAGaussianBlur(double sigma, double degrees, boolean lying) {
        FrequencyResponse response = SlantedEdge.measure(edge(sigma, degrees, lying, 0), Area.whole(96, 96));

        assertThat(response.half()).isCloseTo(Math.sqrt(Math.log(2) / 2) / (Math.PI * sigma), within(0.005));
        for (double f = 0.05; f < 0.5; f += 0.05) {
            assertThat(response.at(f)).isCloseTo(Math.exp(-2 * Math.pow(Math.PI * sigma * f, 2)), within(0.02));
        }
        assertThat(response.greatest()).isCloseTo(1, within(0.005));
    }

    @Test
    void bearsNoise() {
        FrequencyResponse response = SlantedEdge.measure(edge(1, 5, false, 0.01), Area.whole(96, 96));

        assertThat(response.half()).isCloseTo(0.1874, within(0.01));
    }

    @Test
    void showsSharpeningAsAResponseAboveOne() {
        Plane plain = edge(1, 5, false, 0);
        Plane blurred = edge(2, 5, false, 0);
        Plane sharpened = new Plane(96, 96);
        for (int i = 0; i < 96 * 96; i++) {
            sharpened.samples()[i] = plain.samples()[i] + (plain.samples()[i] - blurred.samples()[i]);
        }

        // 2 exp(-a) - exp(-4 a) is greatest where exp(-3 a) = 1/2, and is 3 / 2^(4/3) there.
        assertThat(SlantedEdge.measure(sharpened, Area.whole(96, 96)).greatest())
                .isCloseTo(3 / Math.pow(2, 4 / 3.0), within(0.01));
    }

    /** The error function is the running sum of the Gaussian, in steps of 1/200 of its sigma. */
    private static Plane edge(double sigma, double degrees, boolean lying, double noise) {
        double[] cumulative = new double[2001];
        for (int i = 1; i < cumulative.length; i++) {
            double t = (i - 1000.5) / 200;
            cumulative[i] = cumulative[i - 1] + Math.exp(-t * t / 2) / (200 * Math.sqrt(2 * Math.PI));
        }
        Random random = new Random(1);
        Plane plane = new Plane(96, 96);
        double angle = Math.toRadians(degrees);
        for (int y = 0; y < 96; y++) {
            for (int x = 0; x < 96; x++) {
                double u = lying ? y : x;
                double v = lying ? x : y;
                double distance = (u - 47.3) * Math.cos(angle) - (v - 48) * Math.sin(angle);
                double place = Math.min(2000, Math.max(0, distance / sigma * 200 + 1000));
                int i = (int) Math.min(1999, place);
                double step = cumulative[i] + (place - i) * (cumulative[i + 1] - cumulative[i]);
                plane.set(x, y, (float) (0.2 + 0.6 * step + noise * random.nextGaussian()));
            }
        }
        return plane;
    }
}
