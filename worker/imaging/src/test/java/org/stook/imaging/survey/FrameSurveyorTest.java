package org.stook.imaging.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Plane;

class FrameSurveyorTest {
    @Test
    void measuresNoiseWhereNothingElseIs() {
        FrameSurvey survey = FrameSurveyor.survey(noisy(0.5, 0.01), 1);
        assertThat(survey.exposure().noise()).isCloseTo(0.01, within(0.0005));
    }

    /**
     * What is left of noise alone, in units of the noise. Of n independent samples a tile's energy is a chi-square over n,
     * and the mean of what lies above 1 is {@code (n / 2e)^(n / 2) / gamma(n / 2 + 1)}: 0.28 for n = 4, which is what a
     * tile of this size has left in the coarsest octave, and 0.035 for n = 256, which it has in the finest.
     */
    @Test
    void takesNoiseOffSharpness() {
        FrameSurvey survey = FrameSurveyor.survey(noisy(0.5, 0.01), 1);
        double[] bounds = {0.06, 0.1, 0.2, 0.35};
        for (int k = 0; k < survey.octaves().size(); k++) {
            double sum = 0;
            for (float e : survey.octaves().get(k)) sum += e;
            assertThat(sum / survey.tiles()).isLessThan(bounds[k] * survey.floors()[k]);
        }
    }

    @Test
    void seesTheSameSharpnessAtAnyExposure() {
        FrameSurvey dark = FrameSurveyor.survey(checks(0.2), 1);
        FrameSurvey bright = FrameSurveyor.survey(checks(0.8), 1);
        int middle = dark.tiles() / 2;
        assertThat(dark.sharpness(middle) / bright.sharpness(middle)).isBetween(0.8, 1.0);
    }

    @Test
    void countsClippedPixels() {
        Plane plane = noisy(0.5, 0);
        for (int i = 0; i < 4800; i++) plane.samples()[i] = 1;
        for (int i = 4800; i < 14400; i++) plane.samples()[i] = 0;
        FrameSurvey.Exposure exposure = FrameSurveyor.survey(plane, 1).exposure();
        assertThat(exposure.white()).isEqualTo(4800 / 153600.0);
        assertThat(exposure.black()).isEqualTo(9600 / 153600.0);
    }

    @Test
    void keepsItsThumbnailWhenThePlaneIsUsedAgain() {
        Plane small = new Plane(40, 30);
        FrameSurvey survey = FrameSurveyor.survey(small, 1);
        small.set(3, 3, 1);
        assertThat(survey.thumbnail().samples()).containsOnly(0);
    }

    private static Plane noisy(double level, double sigma) {
        Random random = new Random(5);
        Plane plane = new Plane(480, 320);
        for (int i = 0; i < plane.samples().length; i++) {
            plane.samples()[i] = (float) (level + sigma * random.nextGaussian());
        }
        return plane;
    }

    private static Plane checks(double level) {
        Plane plane = new Plane(480, 320);
        for (int i = 0; i < plane.samples().length; i++) {
            boolean light = (i / 4 + i / 480 / 4) % 2 == 0;
            plane.samples()[i] = (float) (level * (light ? 1.1 : 0.9));
        }
        return plane;
    }
}
