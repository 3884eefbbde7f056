package org.stook.imaging.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.awt.color.ColorSpace;
import java.awt.color.ICC_Profile;
import java.awt.image.ColorConvertOp;
import java.awt.image.DataBuffer;
import java.awt.image.Raster;
import java.awt.image.WritableRaster;
import java.security.MessageDigest;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.IccProfile;
import org.stook.imaging.frame.Samples;

class ColourSpaceTest {
    private static final ColourSpace SRGB = ColourSpace.srgb();

    /** IEC 61966-2-1 clause 5.2 (four decimals, from memory). */
    @Test
    void srgbMatrixIsTheStandards() {
        assertNear(
                Primaries.SRGB.toXyz(), 6e-5, 0.4124, 0.3576, 0.1805, 0.2126, 0.7152, 0.0722, 0.0193, 0.1192, 0.9505);
    }

    /** Adobe RGB (1998) Color Image Encoding, 4.3.5.3 (from memory). */
    @Test
    void adobeRgbMatrixIsTheEncodings() {
        assertNear(Primaries.ADOBE_RGB.toXyz(), 6e-5, new double[] {
            0.57667, 0.18556, 0.18823, 0.29734, 0.62736, 0.07529, 0.02703, 0.07069, 0.99134
        });
    }

    /** ISO 22028-2 (four decimals, from memory). */
    @Test
    void rommMatrixIsTheStandards() {
        assertNear(Primaries.ROMM.toXyz(), 4e-4, 0.7977, 0.1352, 0.0313, 0.2880, 0.7119, 0.0001, 0, 0, 0.8249);
    }

    /** CSS Color Module Level 4, sample code for display-p3 (from memory). */
    @Test
    void p3MatrixIsAsPublished() {
        assertNear(
                Primaries.P3.toXyz(), 6e-5, 0.48657, 0.26567, 0.19822, 0.22897, 0.69174, 0.07929, 0, 0.04511, 1.04394);
    }

    /** The colour engine behind java.awt (LittleCMS) reads our profiles and does the same with them. */
    @Test
    void colourEngineOfTheRuntimeAgreesWithOurProfiles() {
        int n = 500;
        int[] codes = new Random(9).ints(3 * n, 0, 65536).toArray();
        for (ColourSpace out :
                new ColourSpace[] {ColourSpace.adobeRgb(), ColourSpace.displayP3(), ColourSpace.proPhotoRgb()}) {
            ICC_Profile[] way = {
                ICC_Profile.getInstance(SRGB.profile().bytes()),
                ICC_Profile.getInstance(out.profile().bytes())
            };
            WritableRaster in = Raster.createInterleavedRaster(DataBuffer.TYPE_USHORT, n, 1, 3, null);
            in.setPixels(0, 0, n, 1, codes);
            WritableRaster converted = in.createCompatibleWritableRaster();
            new ColorConvertOp(way, null).filter(in, converted);

            Frame ours = toned(codes, out);
            for (int i = 0; i < 3 * n; i++) {
                double theirs = converted.getSample(i / 3, 0, i % 3) / 65535.0;
                assertThat((double) ours.plane(i % 3).at(i / 3, 0))
                        .as("%s %d", out, i)
                        .isCloseTo(theirs, offset(1.5e-3));
            }
        }
    }

    private static Frame toned(int[] codes, ColourSpace out) {
        short[] shorts = new short[codes.length];
        for (int i = 0; i < shorts.length; i++) shorts[i] = (short) codes[i];
        Samples samples = new Samples.Sixteen(codes.length / 3, 1, 3, shorts);
        Tone tone = Tone.prepare(ToneSettings.none(), SRGB, out, 1);
        Frame frame = tone.blank(samples.width(), 1);
        tone.apply(samples, frame);
        return frame;
    }

    @Test
    void ownProfilesReadBackAsWhatTheyAre() throws Exception {
        for (ColourSpace space : new ColourSpace[] {
            SRGB, ColourSpace.adobeRgb(), ColourSpace.displayP3(), ColourSpace.proPhotoRgb(), SRGB.grey()
        }) {
            ColourSpace read = ColourSpace.of(space.profile(), space.isGrey() ? 1 : 3);
            for (double light = 0; light <= 1; light += 0.01) {
                // Parameters of a profile have 16 binary places.
                assertThat(read.fromLight(0, light)).isCloseTo(space.fromLight(0, light), offset(2e-4));
            }
            assertThat(read.profile()).isSameAs(read.isGrey() ? read.profile() : space.profile());
        }
    }

    /** Profiles of the runtime: someone else's sRGB with a sampled curve, linear RGB, linear grey. */
    @Test
    void readsProfilesOfOthers() throws Exception {
        ColourSpace theirs = ColourSpace.of(runtime(ColorSpace.CS_sRGB), 3);
        for (double v = 0; v <= 1; v += 0.01)
            assertThat(theirs.toLight(0, v)).isCloseTo(SRGB.toLight(0, v), offset(1e-3));
        assertNear(theirs.toConnection(), 1e-3, SRGB.toConnection().m());
        ColourSpace linear = ColourSpace.of(runtime(ColorSpace.CS_LINEAR_RGB), 3);
        assertThat(linear.toLight(1, 0.25)).isCloseTo(0.25, offset(1e-4));
        ColourSpace grey = ColourSpace.of(runtime(ColorSpace.CS_GRAY), 1);
        assertThat(grey.isGrey()).isTrue();
        assertThat(grey.toLight(0, 0.5)).isCloseTo(0.5, offset(1e-3));
    }

    @Test
    void sampledCurvesAreHonouredBothWays() {
        TransferCurve.Sampled curve = new TransferCurve.Sampled(new int[] {0, 0, 6553, 65535});
        assertThat(curve.toLight(1 / 3.0)).isZero();
        assertThat(curve.toLight(0.5)).isCloseTo(6553 / 65535.0 / 2, offset(1e-9));
        assertThat(curve.fromLight(curve.toLight(0.8))).isCloseTo(0.8, offset(1e-9));
        assertThat(curve.fromLight(0)).isZero();
        assertThat(curve.fromLight(1)).isEqualTo(1);
    }

    @Test
    void refusesProfilesThatGiveNoLight() {
        assertThatThrownBy(() -> ColourSpace.of(runtime(ColorSpace.CS_PYCC), 3))
                .isInstanceOf(UnusableProfile.class)
                .hasMessageContaining("expected");
        assertThatThrownBy(() -> ColourSpace.of(IccProfile.of(new byte[60]), 3)).hasMessageContaining("no ICC profile");
        assertThatThrownBy(() -> ColourSpace.of(SRGB.grey().profile(), 3)).hasMessageContaining("grey profile");
    }

    @Test
    void flippedBitsInAProfileNeverDoMoreThanMakeItUnusable() throws Exception {
        Random random = new Random(3);
        for (int i = 0; i < 3000; i++) {
            byte[] bytes = SRGB.profile().bytes();
            for (int flips = 1 + i % 4; flips > 0; flips--)
                bytes[random.nextInt(bytes.length)] ^= (byte) (1 << random.nextInt(8));
            try {
                ColourSpace space = ColourSpace.of(IccProfile.of(bytes), 3);
                assertThat(space.fromLight(0, 0.5)).isBetween(-100.0, 100.0);
            } catch (UnusableProfile refused) {
                assertThat(refused).hasMessageStartingWith("colour profile: found ");
            }
        }
    }

    /** Pinned: a composite's bytes contain them. */
    @Test
    void writtenProfilesNeverChange() throws Exception {
        MessageDigest digest = MessageDigest.getInstance("SHA-256");
        for (ColourSpace space : new ColourSpace[] {
            SRGB, ColourSpace.adobeRgb(), ColourSpace.displayP3(), ColourSpace.proPhotoRgb(), SRGB.grey()
        }) {
            digest.update(space.profile().bytes());
        }
        assertThat(HexFormat.of().formatHex(digest.digest()))
                .isEqualTo("51f0fd74edb1ee916567fce6919ac1690fa17474277d5c35be6a6b47d60134a1");
    }

    private static IccProfile runtime(int space) {
        return IccProfile.of(ICC_Profile.getInstance(space).getData());
    }

    private static void assertNear(Matrix matrix, double tolerance, double... expected) {
        for (int i = 0; i < 9; i++) {
            assertThat(matrix.m()[i])
                    .as("%s at %d", Arrays.toString(matrix.m()), i)
                    .isCloseTo(expected[i], offset(tolerance));
        }
    }
}
