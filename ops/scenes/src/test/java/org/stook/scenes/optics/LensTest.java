package org.stook.scenes.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LensTest {

    /** Thin-lens circle of confusion, c = A m |S2 - S1| / S2 with A = f/N and m = f/(S1 - f); Wikipedia, "Circle of confusion". */
    @ParameterizedTest
    @CsvSource({"100, 4, 200, 210", "100, 4, 200, 190", "50, 2.8, 1000, 3000", "60, 8, 150, 149"})
    void blurFollowsTheThinLensFormula(double f, double n, double focus, double object) {
        double aperture = f / n;
        double magnification = f / (focus - f);
        double expected = aperture * magnification * Math.abs(object - focus) / object;
        assertThat(new Lens(f, n).blurDiameter(focus, object)).isCloseTo(expected, within(1e-9));
    }

    /** Lens maker's table for a 1-5x macro lens as quoted in Wikipedia: 2.24 mm at life size, f/16; 0.048 mm at 5x, f/2.8. */
    @ParameterizedTest
    @CsvSource({"1, 16, 2.24, 0.005", "5, 2.8, 0.048, 0.03"})
    void depthOfFieldFollowsPublishedFigures(double magnification, double n, double published, double tolerance) {
        double depth = new Lens(65, n).depthOfField(magnification, 0.035);
        assertThat(depth).isCloseTo(published, within(tolerance * published));
    }

    @Test
    void stepOfTheSweepChangesTheCircleByTheShareAskedFor() {
        Sweep sweep = org.stook.scenes.bracket.Rig.USUAL.sweep(1500);
        assertThat(sweep.blurRadius(0, 1)).isCloseTo(0.7 * 1.4, within(0.005));
        assertThat(sweep.blurRadius(3, 3)).isZero();
        assertThat(sweep.blurRadius(7, 3)).isCloseTo(4 * 0.98, within(0.05));
    }

    @Test
    void farPositionsLieFartherAway() {
        Sweep sweep = org.stook.scenes.bracket.Rig.USUAL.sweep(1500);
        assertThat(sweep.objectDistance(0)).isCloseTo(200, within(1e-9));
        assertThat(sweep.objectDistance(5)).isGreaterThan(sweep.objectDistance(4));
    }
}
