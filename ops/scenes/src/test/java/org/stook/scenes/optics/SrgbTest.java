package org.stook.scenes.optics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.color.ColorSpace;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SrgbTest {

    /** IEC 61966-2-1: 18 % grey is code 117.6 / 255 (rounded 118), code 128 is 21.59 % light (common practice). */
    @ParameterizedTest
    @CsvSource({"0.18, 0.461356", "0.2158605, 0.5019608", "0.0031308, 0.04045", "0.001, 0.01292", "1, 1", "0, 0"})
    void encodesByTheStandard(double linear, double encoded) {
        assertThat(Srgb.encode(linear)).isCloseTo((float) encoded, within(2e-5f));
        assertThat(Srgb.decode(encoded)).isCloseTo(linear, within(2e-5));
    }

    /** The Java platform's own sRGB profile as second opinion. */
    @Test
    void decodesLikeThePlatformsProfile() {
        ColorSpace linear = ColorSpace.getInstance(ColorSpace.CS_LINEAR_RGB);
        for (float v = 0.05f; v < 1; v += 0.05f) {
            assertThat(Srgb.decode(v)).isCloseTo(linear.fromRGB(new float[] {v, v, v})[1], within(1.5e-3));
        }
    }

    @Test
    void clipsWhatCannotBeEncoded() {
        assertThat(Srgb.encode(-0.1)).isZero();
        assertThat(Srgb.encode(1.7)).isEqualTo(1);
        assertThat(Srgb.encode(Double.NaN)).isZero();
    }
}
