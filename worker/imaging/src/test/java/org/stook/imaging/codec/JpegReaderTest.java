package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.imaging.codec.UnreadableFrame.Reason;
import org.stook.imaging.frame.IccProfile;
import org.stook.imaging.frame.Samples;

/** Read files come from the Java runtime's JPEG writer. */
class JpegReaderTest extends FrameReaderContract {
    private static final Samples COLOUR = TestPicture.eight(61, 43, 3);

    @Override
    FrameReader reader() {
        return new JpegReader();
    }

    @Override
    List<SampleFile> files() throws Exception {
        Samples grey = TestPicture.eight(61, 43, 1);
        return List.of(
                new SampleFile("4:4:4", RuntimeFiles.jpeg(COLOUR, 1, 1, false), COLOUR, 3),
                new SampleFile("4:2:2", RuntimeFiles.jpeg(COLOUR, 2, 1, false), COLOUR, 5),
                new SampleFile("4:2:0", RuntimeFiles.jpeg(COLOUR, 2, 2, false), COLOUR, 5),
                new SampleFile("progressive", RuntimeFiles.jpeg(COLOUR, 2, 2, true), COLOUR, 5),
                new SampleFile("grey", RuntimeFiles.jpeg(grey, 1, 1, false), grey, 3));
    }

    /** The runtime's own way from luma and chroma to RGB (libjpeg's) as the yardstick. */
    @ParameterizedTest
    @CsvSource({"1, 1", "2, 1", "2, 2"})
    void convertsColoursAsLibjpegDoes(int columns, int rows) throws Exception {
        byte[] file = RuntimeFiles.jpeg(COLOUR, columns, rows, false);
        BufferedImage expected = ImageIO.read(new ByteArrayInputStream(file));
        Samples read = reader().read(write("f", file));
        for (int y = 0; y < read.height(); y++) {
            for (int x = 0; x < read.width(); x++) {
                int rgb = read.code(x, y, 0) << 16 | read.code(x, y, 1) << 8 | read.code(x, y, 2);
                assertThat(rgb).isEqualTo(expected.getRGB(x, y) & 0xFFFFFF);
            }
        }
    }

    @Test
    void readsRgbThatAdobesMarkerDeclares() throws Exception {
        byte[] file = RuntimeFiles.jpeg(TestPicture.eight(16, 16, 3), 1, 1, false);
        byte[] adobe = {(byte) 0xFF, (byte) 0xEE, 0, 14, 'A', 'd', 'o', 'b', 'e', 0, 100, 0, 0, 0, 0, 0};
        int jfif = 2 + 18;
        ByteArrayOutputStream plain = new ByteArrayOutputStream();
        plain.write(file, 0, 2);
        plain.writeBytes(adobe);
        plain.write(file, jfif, file.length - jfif);
        Samples lumaChroma = reader().read(write("a", file));
        Samples asStored = reader().read(write("b", plain.toByteArray()));
        // The first channel is luma in one reading and red in the other; BT.601 ties them together.
        double luma =
                0.299 * lumaChroma.code(8, 8, 0) + 0.587 * lumaChroma.code(8, 8, 1) + 0.114 * lumaChroma.code(8, 8, 2);
        assertThat((double) asStored.code(8, 8, 0)).isCloseTo(luma, within(1.5));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0.3, 0.6, 0.9, 0.99})
    void refusesPictureThatStopsEarlyThoughItsEndMarkerIsThere(double share) throws Exception {
        for (boolean progressive : new boolean[] {false, true}) {
            byte[] file = RuntimeFiles.jpeg(TestPicture.eight(200, 160, 3), 2, 2, progressive);
            byte[] cut = Arrays.copyOf(file, 2 + (int) (share * file.length));
            cut[cut.length - 2] = (byte) 0xFF;
            cut[cut.length - 1] = (byte) 0xD9;
            UnreadableFrame refused =
                    catchThrowableOfType(UnreadableFrame.class, () -> reader().read(write("short.jpg", cut)));
            assertThat(refused).as("progressive %s", progressive).isNotNull();
        }
    }

    @Test
    void toleratesAFewPaddingBytesBeforeTheEnd() throws Exception {
        byte[] file = RuntimeFiles.jpeg(COLOUR, 1, 1, false);
        byte[] padded = Arrays.copyOf(file, file.length + 4);
        Arrays.fill(padded, file.length - 2, padded.length - 2, (byte) 0);
        padded[padded.length - 2] = (byte) 0xFF;
        padded[padded.length - 1] = (byte) 0xD9;
        assertThat(TestPicture.codes(reader().read(write("f", padded))))
                .isEqualTo(TestPicture.codes(reader().read(write("f", file))));
    }

    @Test
    void refusesSizeThatTheDataCannotFillBeforeAllocating() throws Exception {
        byte[] bomb = RuntimeFiles.jpeg(COLOUR, 1, 1, false);
        int header = frameHeader(bomb);
        for (int i = 0; i < 4; i++) bomb[header + 5 + i] = (byte) 0x4E; // 20046 x 20046
        UnreadableFrame refused =
                catchThrowableOfType(UnreadableFrame.class, () -> reader().header(write("bomb.jpg", bomb)));
        assertThat(refused).hasMessageContaining("20046 x 20046");
        assertThat(refused.reason()).isEqualTo(Reason.DAMAGED);
    }

    @ParameterizedTest
    @CsvSource({"1, 0xC3, lossless", "4, 12, 12 bit", "9, 4, damaged or 4"})
    void saysWhyAVariantIsNotRead(int offset, int value, String words) throws Exception {
        byte[] file = RuntimeFiles.jpeg(COLOUR, 1, 1, false);
        file[frameHeader(file) + offset] = (byte) value;
        UnreadableFrame refused =
                catchThrowableOfType(UnreadableFrame.class, () -> reader().header(write("odd.jpg", file)));
        assertThat(refused).hasMessageStartingWith("odd.jpg: found ");
        if (!words.startsWith("damaged")) assertThat(refused).hasMessageContaining(words);
    }

    @Test
    void joinsProfilesOfManyPartsAndMissesLostOnes() throws Exception {
        byte[] profile = new byte[150_000];
        new Random(5).nextBytes(profile);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JpegWriter.write(
                Frames.of(COLOUR),
                new JpegTags(0.9, Optional.of(IccProfile.of(profile)), 300, Origin.of("Stook")),
                out);
        byte[] file = out.toByteArray();
        assertThat(reader().header(write("f", file)).colour().profile()).contains(IccProfile.of(profile));

        int second = indexOf(file, new byte[] {'I', 'C', 'C', '_', 'P', 'R', 'O', 'F', 'I', 'L', 'E', 0, 2, 3});
        file[second] = 'X';
        UnreadableFrame refused =
                catchThrowableOfType(UnreadableFrame.class, () -> reader().header(write("lost.jpg", file)));
        assertThat(refused).hasMessageContaining("parts [1, 3]");
    }

    @Test
    void tellsHowTheFrameWasTaken() throws Exception {
        OffsetDateTime taken = OffsetDateTime.of(2026, 3, 14, 15, 9, 26, 530_000_000, ZoneOffset.ofHours(2));
        byte[] file = CameraFiles.jpeg(taken);
        FrameHeader header = reader().header(write("f", file));
        Capture capture = header.capture();
        assertThat(capture.time())
                .contains(new CaptureTime(
                        LocalDateTime.of(2026, 3, 14, 15, 9, 26, 530_000_000), Optional.of(ZoneOffset.ofHours(2))));
        assertThat(capture.camera().make()).contains(CameraFiles.CAMERA.make());
        assertThat(capture.camera().model()).contains(CameraFiles.CAMERA.model());
        assertThat(capture.camera().serial()).contains(CameraFiles.CAMERA.serial());
        assertThat(capture.iso()).contains(CameraFiles.CAMERA.iso());
        assertThat(capture.exposureSeconds().orElseThrow())
                .isCloseTo(1.0 / CameraFiles.CAMERA.exposure(), within(1e-9));
        assertThat(capture.fNumber().orElseThrow()).isCloseTo(CameraFiles.LENS.fNumber(), within(1e-9));
        assertThat(capture.focalLength().orElseThrow()).isCloseTo(CameraFiles.LENS.focalLength(), within(1e-9));
        assertThat(header.colour().exif()).isEqualTo(FrameHeader.Declared.SRGB);
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8})
    void appliesOrientation(int orientation) throws Exception {
        byte[] file = RuntimeFiles.jpeg(COLOUR, 1, 1, false);
        byte[] exif = {
            (byte) 0xFF,
            (byte) 0xE1,
            0,
            34,
            'E',
            'x',
            'i',
            'f',
            0,
            0,
            'M',
            'M',
            0,
            42,
            0,
            0,
            0,
            8,
            0,
            1,
            0x01,
            0x12,
            0,
            3,
            0,
            0,
            0,
            1,
            0,
            (byte) orientation,
            0,
            0,
            0,
            0,
            0,
            0
        };
        ByteArrayOutputStream turned = new ByteArrayOutputStream();
        turned.write(file, 0, 2);
        turned.writeBytes(exif);
        turned.write(file, 2, file.length - 2);
        FrameHeader header = reader().header(write("f", turned.toByteArray()));
        Samples upright = reader().read(write("f", turned.toByteArray()));
        assertThat(header.orientation()).isEqualTo(orientation);
        assertThat(header.width()).isEqualTo(upright.width()).isEqualTo(orientation < 5 ? 61 : 43);
        assertThat(TestPicture.codes(upright))
                .isEqualTo(TestPicture.codes(Orientation.upright(reader().read(write("g", file)), orientation)));
    }

    /** Offset of the frame header's marker. */
    private static int frameHeader(byte[] file) {
        return indexOf(file, new byte[] {(byte) 0xFF, (byte) 0xC0});
    }

    private static int indexOf(byte[] bytes, byte[] wanted) {
        for (int i = 0; i + wanted.length <= bytes.length; i++) {
            if (Arrays.equals(bytes, i, i + wanted.length, wanted, 0, wanted.length)) return i;
        }
        throw new AssertionError("not in the file");
    }
}
