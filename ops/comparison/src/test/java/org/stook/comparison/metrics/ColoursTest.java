package org.stook.comparison.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.tone.Lab;

class ColoursTest {
    private static final Area WHOLE = Area.whole(4, 4);

    /** CIELAB (D65, 2 degrees) of the sRGB primaries as tables of colour conversions print it; from memory. */
    @Test
    void primariesHaveTheTabulatedColours() {
        assertLab(Colours.mean(filled(1, 0, 0), WHOLE), 53.24, 80.09, 67.20);
        assertLab(Colours.mean(filled(0, 1, 0), WHOLE), 87.73, -86.18, 83.18);
        assertLab(Colours.mean(filled(0, 0, 1), WHOLE), 32.30, 79.19, -107.86);
        assertLab(Colours.mean(filled(1, 1, 1), WHOLE), 100, 0, 0);
    }

    @Test
    void noiseWithoutAShiftOfItsMeanIsNoDifference() {
        Frame even = filled(0.5f, 0.5f, 0.5f);
        Frame noisy = filled(0.5f, 0.5f, 0.5f);
        for (int c = 0; c < 3; c++) {
            for (int i = 0; i < 16; i++) noisy.plane(c).samples()[i] += i % 2 == 0 ? 0.004f : -0.004f;
        }

        assertThat(Colours.difference(even, WHOLE, noisy, WHOLE)).isLessThan(0.01);
        assertThat(Colours.difference(even, WHOLE, filled(0.51f, 0.5f, 0.5f), WHOLE))
                .isGreaterThan(0.5);
    }

    private static void assertLab(Lab lab, double l, double a, double b) {
        assertThat(lab.l()).isCloseTo(l, within(0.02));
        assertThat(lab.a()).isCloseTo(a, within(0.02));
        assertThat(lab.b()).isCloseTo(b, within(0.02));
    }

    private static Frame filled(float red, float green, float blue) {
        Frame frame = Frame.blank(4, 4, 3);
        float[] colour = {red, green, blue};
        for (int c = 0; c < 3; c++) java.util.Arrays.fill(frame.plane(c).samples(), colour[c]);
        return frame;
    }
}
