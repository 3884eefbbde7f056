package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.ByteBuffer;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stook.imaging.codec.raw.NeedsLibRaw;
import org.stook.imaging.frame.Samples;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.file.Camera;
import org.stook.scenes.file.Capture;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.file.FrameWriter;
import org.stook.scenes.optics.Lens;
import org.stook.scenes.optics.SensorNoise;
import org.stook.scenes.subject.Subjects;

/** DNG files of a scene whose truth is known, written by code that shares nothing with the reader. */
class RawReaderTest extends FrameReaderContract {
    private static final OffsetDateTime TAKEN = OffsetDateTime.parse("2026-03-02T09:00:07.250+01:00");
    private static final Picture SCENE = Bracket.of(
                    Subjects.mineral(1), BracketPlan.of(240, 160, 3, 1).withNoise(SensorNoise.NONE))
            .encoded(1);

    @BeforeAll
    static void library() throws Exception {
        NeedsLibRaw.orSaySo();
    }

    @Override
    FrameReader reader() {
        return new RawReader();
    }

    @Override
    List<SampleFile> files() {
        return List.of(new SampleFile("14 bit", bytes(FrameFormat.DNG_14_JPEG), truth(), 700));
    }

    @Override
    int damagedCopies() {
        return 4;
    }

    private static byte[] bytes(FrameFormat format) {
        return FrameWriter.bytes(SCENE, format, new Capture(Camera.USUAL, new Lens(100, 4), TAKEN));
    }

    private static Samples truth() {
        short[] codes = new short[3 * SCENE.width() * SCENE.height()];
        for (int i = 0; i < codes.length; i++) codes[i] = (short) Math.round(65535 * SCENE.planes()[i % 3][i / 3]);
        return new Samples.Sixteen(SCENE.width(), SCENE.height(), 3, codes);
    }

    /** Peak signal to noise over all samples, dB; a border of four pixels is left out. */
    private static double psnr(Samples made, Samples truth) {
        double sum = 0;
        int count = 0;
        for (int y = 4; y < made.height() - 4; y++) {
            for (int x = 4; x < made.width() - 4; x++) {
                for (int c = 0; c < 3; c++, count++) {
                    double off = (made.code(x, y, c) - truth.code(x, y, c)) / 65535.0;
                    sum += off * off;
                }
            }
        }
        return -10 * Math.log10(sum / count);
    }

    @ParameterizedTest
    @EnumSource(names = {"DNG_12", "DNG_14", "DNG_14_JPEG"})
    void pictureIsTheSceneThatWasCounted(FrameFormat format) throws Exception {
        Samples made = reader().read(write("frame.dng", bytes(format)));
        assertThat(psnr(made, truth())).isGreaterThan(38);
    }

    @Test
    void headerTellsTheCaptureAndWhatTheCodesMean() throws Exception {
        FrameHeader header = FrameReaders.header(write("frame.dng", bytes(FrameFormat.DNG_12)));
        assertThat(header.capture().time().orElseThrow().local()).isEqualTo(TAKEN.toLocalDateTime());
        assertThat(header.capture().camera().serial()).contains("TB4500117");
        assertThat(header.capture().fNumber()).contains(4.0);
        assertThat(header.colour().exif()).isEqualTo(FrameHeader.Declared.SRGB);
        assertThat(header.colour().profile()).isEqualTo(Optional.empty());
    }

    @Test
    void orientationIsApplied() throws Exception {
        byte[] file = bytes(FrameFormat.DNG_12);
        Samples upright = reader().read(write("frame.dng", file));
        // The entry of the tag: number, type SHORT, count 1, value.
        int entry = find(file, 0x0112, 3, 1);
        ByteBuffer.wrap(file).putShort(entry + 8, (short) 6);
        Path turned = write("turned.dng", file);
        assertThat(reader().header(turned).width()).isEqualTo(160);
        Samples read = reader().read(turned);
        assertThat(read.code(159, 0, 1)).isEqualTo(upright.code(0, 0, 1));
        assertThat(read.code(0, 239, 1)).isEqualTo(upright.code(239, 159, 1));
    }

    private static int find(byte[] file, int tag, int type, int count) {
        ByteBuffer bytes = ByteBuffer.wrap(file);
        for (int at = 10; at < file.length - 12; at += 12) {
            if (bytes.getShort(at) == tag && bytes.getShort(at + 2) == type && bytes.getInt(at + 4) == count) return at;
        }
        throw new AssertionError("no entry " + tag);
    }

    @Test
    void dataThatContradictThemselvesAreRefusedInASentence() throws Exception {
        byte[] file = bytes(FrameFormat.DNG_14_JPEG);
        for (int i = file.length / 2; i < file.length - 2; i += 3) file[i] = (byte) 0xFF;
        Path broken = Files.write(folder.resolve("broken.dng"), file);
        assertThatThrownBy(() -> reader().read(broken))
                .isInstanceOf(UnreadableFrame.class)
                .hasMessageContaining("broken.dng: found picture data that end early or contradict themselves");
    }
}
