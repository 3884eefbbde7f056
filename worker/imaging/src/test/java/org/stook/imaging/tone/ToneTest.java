package org.stook.imaging.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Samples;

class ToneTest {
    private static final ColourSpace SRGB = ColourSpace.srgb();
    private static final ToneSettings EVERYTHING = ToneSettings.none()
            .withExposure(0.4)
            .withWhiteBalance(new ToneSettings.WhiteBalance(1.1, 1, 0.9))
            .withPoints(0.01, 0.9)
            .withMidTone(1.2)
            .withContrast(0.3)
            .withSaturation(1.2);

    @ParameterizedTest
    @ValueSource(ints = {8, 16})
    void unchangedCodesAreExactFractions(int bits) {
        Samples samples = noise(bits, 50, 20, 3);
        Frame out = toned(Tone.prepare(ToneSettings.none(), SRGB, SRGB, 1), samples);
        for (int c = 0; c < 3; c++) {
            for (int x = 0; x < 50; x++) {
                assertThat(out.plane(c).at(x, 7)).isEqualTo(samples.code(x, 7, c) / (float) samples.maxCode());
            }
        }
    }

    /** A slow, obvious version: the formulas of the settings' description, sample by sample, in double precision. */
    @ParameterizedTest
    @ValueSource(ints = {8, 16})
    void agreesWithTheFormulas(int bits) {
        Samples samples = noise(bits, 40, 10, 3);
        ColourSpace wide = ColourSpace.adobeRgb();
        Frame out = toned(Tone.prepare(EVERYTHING, SRGB, wide, 1.03), samples);
        Matrix change = wide.toConnection().inverse().times(SRGB.toConnection());
        double[] gains = {1.1, 1, 0.9};
        for (int x = 0; x < 40; x++) {
            double[] light = new double[3];
            for (int c = 0; c < 3; c++) {
                double l = SRGB.toLight(c, samples.code(x, 3, c) / (double) samples.maxCode());
                l = (l * 1.03 * gains[c] * StrictMath.pow(2, 0.4) - 0.01) / (0.9 - 0.01);
                l = StrictMath.pow(Math.max(0, Math.min(1, l)), 1 / 1.2);
                double k = StrictMath.pow(2, 0.3);
                light[c] =
                        l <= 0.18 ? 0.18 * StrictMath.pow(l / 0.18, k) : 1 - 0.82 * StrictMath.pow((1 - l) / 0.82, k);
            }
            double y = SRGB.toConnection().times(light)[1];
            double[] saturated =
                    Arrays.stream(light).map(l -> y + 1.2 * (l - y)).toArray();
            double[] result = change.times(saturated);
            for (int c = 0; c < 3; c++) {
                double expected = wide.fromLight(c, Math.max(0, Math.min(1, result[c])));
                assertThat((double) out.plane(c).at(x, 3)).isCloseTo(expected, offset(3e-6));
            }
        }
    }

    @Test
    void encodingTableStaysNearTheCurveInEverySpace() {
        for (ColourSpace space :
                List.of(SRGB, ColourSpace.adobeRgb(), ColourSpace.displayP3(), ColourSpace.proPhotoRgb())) {
            EncodingTable table = new EncodingTable(space.curve(0));
            for (int i = 0; i <= 40_000; i++) {
                double light = StrictMath.pow(i / 40_000.0, 3); // dense near black
                assertThat((double) table.encode(light)).isCloseTo(space.fromLight(0, light), offset(3e-6));
            }
        }
    }

    @Test
    void rowsCanBeSharedOutInAnyWay() {
        Samples samples = noise(16, 30, 24, 3);
        Tone tone = Tone.prepare(EVERYTHING, SRGB, SRGB, 1.1, 1, 0.9);
        Frame whole = tone.blank(30, 24);
        Frame pieces = tone.blank(30, 24);
        Clipping all = tone.apply(samples, whole);
        Clipping sum = tone.applyRows(samples, 17, 24, pieces)
                .plus(tone.applyRows(samples, 0, 1, pieces))
                .plus(tone.applyRows(samples, 1, 17, pieces));
        assertThat(sum).isEqualTo(all);
        for (int c = 0; c < 3; c++) {
            assertThat(pieces.plane(c).samples()).isEqualTo(whole.plane(c).samples());
        }
    }

    @Test
    void clippingIsCounted() {
        Samples samples = new Samples.Eight(4, 1, 1, new byte[] {0, 20, (byte) 200, (byte) 255});
        ToneSettings settings = ToneSettings.none().withPoints(0.01, 0.5);
        Tone tone = Tone.prepare(settings, SRGB.grey(), SRGB.grey(), 1);
        // Codes 0 and 20 have less light than 0.01, codes 200 and 255 more than 0.5.
        assertThat(tone.apply(samples, tone.blank(4, 1))).isEqualTo(new Clipping(2, 2, 0, 4));
        Tone none = Tone.prepare(ToneSettings.none(), SRGB.grey(), SRGB.grey(), 1);
        assertThat(none.apply(samples, none.blank(4, 1)).share()).isZero();
    }

    @Test
    void coloursOutOfTheOutputsGamutAreCounted() {
        Samples green = new Samples.Eight(1, 1, 3, new byte[] {0, (byte) 255, 0});
        Tone tone = Tone.prepare(ToneSettings.none(), ColourSpace.adobeRgb(), SRGB, 1);
        assertThat(tone.apply(green, tone.blank(1, 1)).outOfGamut()).isPositive();
        Tone wider = Tone.prepare(ToneSettings.none(), SRGB, ColourSpace.proPhotoRgb(), 1);
        assertThat(wider.apply(noise(8, 30, 30, 3), wider.blank(30, 30)).outOfGamut())
                .isZero();
    }

    @Test
    void neutralColoursStayNeutralInEverySpace() {
        Samples grey = new Samples.Eight(1, 1, 3, new byte[] {100, 100, 100});
        for (ColourSpace out : List.of(ColourSpace.adobeRgb(), ColourSpace.displayP3(), ColourSpace.proPhotoRgb())) {
            Frame toned = toned(Tone.prepare(ToneSettings.none(), SRGB, out, 1), grey);
            assertThat(toned.plane(0).at(0, 0)).isCloseTo(toned.plane(1).at(0, 0), offset(2e-5f));
            assertThat(toned.plane(2).at(0, 0)).isCloseTo(toned.plane(1).at(0, 0), offset(2e-5f));
        }
    }

    @Test
    void thereAndBackThroughAWideSpaceIsTheSame() {
        Samples samples = noise(16, 40, 10, 3);
        Frame wide = toned(Tone.prepare(ToneSettings.none(), SRGB, ColourSpace.proPhotoRgb(), 1), samples);
        Frame back = Frame.blank(40, 10, 3);
        Tone.prepare(ToneSettings.none(), ColourSpace.proPhotoRgb(), SRGB, 1).applyRows(wide, 0, 10, back);
        for (int c = 0; c < 3; c++) {
            for (int x = 0; x < 40; x++) {
                // One 16-bit step of the wide space is several of the narrow one, above all near black.
                assertThat(back.plane(c).at(x, 4)).isCloseTo(samples.code(x, 4, c) / 65535f, offset(4e-4f));
            }
        }
    }

    @Test
    void saturationKeepsLuminanceAndZeroLeavesNoColour() {
        Samples samples = noise(16, 40, 1, 3);
        Frame none = toned(Tone.prepare(ToneSettings.none().withSaturation(0), SRGB, SRGB, 1), samples);
        for (int x = 0; x < 40; x++) {
            double[] light = new double[3];
            for (int c = 0; c < 3; c++) light[c] = SRGB.toLight(c, samples.code(x, 0, c) / 65535.0);
            double luminance = SRGB.fromLight(0, SRGB.toConnection().times(light)[1]);
            for (int c = 0; c < 3; c++)
                assertThat((double) none.plane(c).at(x, 0)).isCloseTo(luminance, offset(1e-5));
        }
    }

    @Test
    void monochromeMixGivesOneChannelAndAGreyProfile() {
        Samples samples = new Samples.Eight(1, 1, 3, new byte[] {(byte) 200, 100, 50});
        ToneSettings settings = ToneSettings.none().withMonochrome(new ToneSettings.MonochromeMix(0.5, 0.3, 0.2));
        Tone tone = Tone.prepare(settings, SRGB, SRGB, 1);
        double light = 0.5 * SRGB.toLight(0, 200 / 255.0)
                + 0.3 * SRGB.toLight(1, 100 / 255.0)
                + 0.2 * SRGB.toLight(2, 50 / 255.0);
        assertThat(tone.outputChannels()).isEqualTo(1);
        assertThat(tone.outputSpace().isGrey()).isTrue();
        assertThat((double) toned(tone, samples).plane(0).at(0, 0)).isCloseTo(SRGB.fromLight(0, light), offset(2e-6));
    }

    @Test
    void midToneAndContrastLeaveBlackPivotAndWhite() {
        Samples ends = new Samples.Sixteen(2, 1, 1, new short[] {0, (short) 65535});
        ToneSettings settings = ToneSettings.none().withMidTone(1.7).withContrast(-0.6);
        Frame out = toned(Tone.prepare(settings, SRGB.grey(), SRGB.grey(), 1), ends);
        assertThat(out.plane(0).at(0, 0)).isZero();
        assertThat(out.plane(0).at(1, 0)).isEqualTo(1);
        ToneCurve contrast = ToneCurve.of(ToneSettings.none().withContrast(0.5), 0, 1);
        assertThat(contrast.light(0.18)).isCloseTo(0.18, offset(1e-12));
        double slope = (contrast.light(0.1801) - contrast.light(0.1799)) / 0.0002;
        assertThat(slope).isCloseTo(StrictMath.sqrt(2), offset(1e-3));
    }

    @Test
    void flickerGainActsOnLightAlone() {
        Samples samples = noise(16, 20, 1, 1);
        Frame out = toned(Tone.prepare(ToneSettings.none(), SRGB.grey(), SRGB.grey(), 0.9), samples);
        for (int x = 0; x < 20; x++) {
            double light = SRGB.toLight(0, samples.code(x, 0, 0) / 65535.0);
            if (light > 0.95) continue; // near white the gain fades out
            assertThat((double) out.plane(0).at(x, 0)).isCloseTo(SRGB.fromLight(0, 0.9 * light), offset(1e-7));
        }
    }

    @Test
    void whiteGroundOfALighterFrameStaysWhite() {
        Samples ground = new Samples.Eight(3, 1, 1, new byte[] {(byte) 253, (byte) 254, (byte) 255});
        Frame out = toned(Tone.prepare(ToneSettings.none(), SRGB.grey(), SRGB.grey(), 0.97), ground);
        assertThat(out.plane(0).at(2, 0)).isEqualTo(1);
        assertThat(out.plane(0).at(1, 0)).isBetween(out.plane(0).at(0, 0), 1f);
    }

    @Test
    void refusesWhatDoesNotFit() {
        Tone tone = Tone.prepare(ToneSettings.none(), SRGB, SRGB, 1);
        assertThatThrownBy(() -> tone.apply(noise(8, 3, 3, 1), tone.blank(3, 3)))
                .hasMessageContaining("has 3 channels");
        assertThatThrownBy(() -> tone.apply(noise(8, 3, 3, 3), tone.blank(3, 4)))
                .hasMessageContaining("3 x 3 x 3");
        assertThatThrownBy(() -> Tone.prepare(ToneSettings.none(), SRGB, SRGB, 0))
                .hasMessageContaining("positive");
        assertThatThrownBy(() -> Tone.prepare(ToneSettings.none(), SRGB, SRGB, 1, 1))
                .hasMessageContaining("one or three");
    }

    private static Frame toned(Tone tone, Samples samples) {
        Frame out = tone.blank(samples.width(), samples.height());
        tone.apply(samples, out);
        return out;
    }

    private static Samples noise(int bits, int width, int height, int channels) {
        Random random = new Random(42);
        int size = width * height * channels;
        if (bits == 8) {
            byte[] codes = new byte[size];
            random.nextBytes(codes);
            return new Samples.Eight(width, height, channels, codes);
        }
        short[] codes = new short[size];
        for (int i = 0; i < size; i++) codes[i] = (short) random.nextInt(65536);
        return new Samples.Sixteen(width, height, channels, codes);
    }
}
