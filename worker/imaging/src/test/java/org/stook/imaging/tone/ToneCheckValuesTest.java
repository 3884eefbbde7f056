package org.stook.imaging.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.data.Offset.offset;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Samples;

/** Numbers worked out from the published formulas, apart from this code; each names its source. */
class ToneCheckValuesTest {
    private static final ColourSpace SRGB = ColourSpace.srgb();

    /** IEC 61966-2-1: light = v / 12.92 up to v = 0.04045, else ((v + 0.055) / 1.055)^2.4. Code 10 is on the straight. */
    @ParameterizedTest
    @CsvSource({"10, 0.003035", "11, 0.003347", "128, 0.215861", "188, 0.502886"})
    void srgbCodesToLight(int code, double light) {
        assertThat(SRGB.toLight(0, code / 255.0)).isCloseTo(light, offset(1e-6));
        assertThat(SRGB.fromLight(0, SRGB.toLight(0, code / 255.0))).isCloseTo(code / 255.0, offset(1e-9));
    }

    /** The same formula, light times 2^EV, back and rounded. */
    @ParameterizedTest
    @CsvSource({
        "-1, '5 44 85 92 137 146'",
        "1, '18 90 162 176 255 255'",
        "0.3333333333333333, '12 72 131 142 208 222'",
        "-0.3333333333333333, '8 57 106 115 169 180'"
    })
    void exposureInStops(double ev, String expected) {
        int[] codes = {10, 64, 118, 128, 188, 200};
        int[] toned = codes(ToneSettings.none().withExposure(ev), codes);
        assertThat(toned).containsExactly(ints(expected));
    }

    /** Property: light doubled and halved is the light it was, unless it was clipped. */
    @Test
    void oneStopUpAndDownAgainIsTheSame() {
        int[] codes = new int[256];
        Arrays.setAll(codes, i -> i);
        Samples samples = grey(codes);
        Tone up = Tone.prepare(ToneSettings.none().withExposure(1), SRGB.grey(), SRGB.grey(), 1);
        Tone down = Tone.prepare(ToneSettings.none().withExposure(-1), SRGB.grey(), SRGB.grey(), 1);
        Frame lighter = up.blank(256, 1);
        Frame back = up.blank(256, 1);
        Clipping clipping = up.apply(samples, lighter);
        down.applyRows(lighter, 0, 1, back);
        // 188 is the first code of more than half the light of white.
        assertThat(clipping).isEqualTo(new Clipping(0, 256 - 188, 0, 256));
        for (int code = 0; code < 188; code++) {
            assertThat(back.plane(0).at(code, 0) * 255).isCloseTo(code, offset(1f));
        }
        assertThat(back.plane(0).at(255, 0) * 255).isCloseTo(187.516f, offset(0.01f));
    }

    /** The mean of black and white is half the light of white: 1.055 x 0.5^(1/2.4) - 0.055 = 0.73536, code 187.516. */
    @Test
    void meanOfBlackAndWhiteIsHalfTheLight() {
        Frame two = Frame.blank(2, 1, 1);
        two.plane(0).set(1, 0, 1);
        Frame one = Shrink.toMaxEdge(two, 1, SRGB.grey());
        assertThat(one.plane(0).at(0, 0) * 255).isCloseTo(187.516f, offset(0.001f));
    }

    /** Patch (180, 160, 140) in sRGB: light ratios to green 0.7702 and 1.3404 by the formula above. */
    @Test
    void whiteBalanceMakesAPatchNeutral() {
        ToneSettings settings = ToneSettings.none().withWhiteBalance(new ToneSettings.WhiteBalance(0.7702, 1, 1.3404));
        int[] toned = codes(settings, 180, 160, 140);
        for (int code : toned) assertThat(code).isBetween(159, 161);
    }

    /**
     * 18 % grey by each formula: sRGB as above; Adobe RGB (1998) light^(256/563); ROMM (ISO 22028-2) light^(1/1.8);
     * CIELAB 116 (0.18)^(1/3) - 16.
     */
    @Test
    void eighteenPerCentGrey() {
        assertThat(255 * SRGB.fromLight(0, 0.18)).isCloseTo(117.65, offset(0.01));
        assertThat(255 * ColourSpace.adobeRgb().fromLight(0, 0.18)).isCloseTo(116.93, offset(0.01));
        assertThat(255 * ColourSpace.proPhotoRgb().fromLight(0, 0.18)).isCloseTo(98.36, offset(0.01));
        assertThat(Lab.of(new double[] {0.18, 0.18, 0.18}, new double[] {1, 1, 1})
                        .l())
                .isCloseTo(49.50, offset(0.01));
    }

    /** ISO 22028-2, as quoted in W3C CSSWG issue 5229: below light 1/512 the code is 16 times the light. */
    @Test
    void rommToe() {
        ColourSpace romm = ColourSpace.proPhotoRgb();
        assertThat(romm.fromLight(0, 0.001)).isCloseTo(0.016, offset(1e-6));
        assertThat(romm.fromLight(0, 1 / 512.0)).isCloseTo(16 / 512.0, offset(1e-6));
        assertThat(romm.fromLight(0, 0.5)).isCloseTo(StrictMath.pow(0.5, 1 / 1.8), offset(1e-6));
        assertThat(romm.toLight(0, 0.016)).isCloseTo(0.001, offset(1e-6));
    }

    /** sRGB red in CIELAB under its own white, D65. Computed from the standard's matrix; common in public test files. */
    @Test
    void srgbRedInLab() {
        Lab red = d65(255, 0, 0);
        assertThat(red.l()).isCloseTo(53.24, offset(0.02));
        assertThat(red.a()).isCloseTo(80.09, offset(0.02));
        assertThat(red.b()).isCloseTo(67.20, offset(0.02));
    }

    /** How large one code step is: computed from the formulas above and Sharma's. */
    @Test
    void oneCodeStepAtMiddleGrey() {
        Lab grey = d65(128, 128, 128);
        assertThat(DeltaE.ciede2000(grey, d65(129, 129, 129))).isCloseTo(0.378, offset(0.005));
        assertThat(DeltaE.ciede2000(grey, d65(130, 128, 128))).isCloseTo(1.138, offset(0.005));
    }

    /** Property: one set of settings is one set of tables, for every frame of a stack. */
    @Test
    void tablesAreTheSameBitsForEveryFrame() {
        ToneSettings settings = ToneSettings.none()
                .withExposure(0.4)
                .withWhiteBalance(new ToneSettings.WhiteBalance(1.1, 1, 0.9))
                .withPoints(0.01, 0.95)
                .withMidTone(1.2)
                .withContrast(0.3);
        for (int bits : new int[] {8, 16}) {
            for (int channel = 0; channel < 3; channel++) {
                float[] first = Tone.prepare(settings, SRGB, SRGB, 1).table(bits, channel);
                float[] second = Tone.prepare(settings, SRGB, SRGB, 1, 1, 1).table(bits, channel);
                assertThat(Arrays.equals(first, second)).isTrue();
            }
        }
    }

    private static Lab d65(int... rgb) {
        double[] light = Arrays.stream(rgb)
                .mapToDouble(code -> SRGB.toLight(0, code / 255.0))
                .toArray();
        return Lab.of(Primaries.SRGB.toXyz().times(light), Primaries.SRGB.whiteXyz());
    }

    private static int[] codes(ToneSettings settings, int... codes) {
        boolean colour = codes.length == 3;
        ColourSpace space = colour ? SRGB : SRGB.grey();
        Samples samples = colour ? rgb(codes) : grey(codes);
        Tone tone = Tone.prepare(settings, space, space, 1);
        Frame out = tone.blank(samples.width(), 1);
        tone.apply(samples, out);
        int[] toned = new int[codes.length];
        for (int i = 0; i < toned.length; i++) {
            float value = colour ? out.plane(i).at(0, 0) : out.plane(0).at(i, 0);
            toned[i] = Math.round(value * 255);
        }
        return toned;
    }

    private static Samples grey(int... codes) {
        return new Samples.Eight(codes.length, 1, 1, bytes(codes));
    }

    private static Samples rgb(int... codes) {
        return new Samples.Eight(1, 1, 3, bytes(codes));
    }

    private static byte[] bytes(int... codes) {
        byte[] bytes = new byte[codes.length];
        for (int i = 0; i < bytes.length; i++) bytes[i] = (byte) codes[i];
        return bytes;
    }

    private static int[] ints(String list) {
        return Arrays.stream(list.split(" ")).mapToInt(Integer::parseInt).toArray();
    }
}
