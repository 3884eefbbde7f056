package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.metadata.Metadata;
import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.IccProfile;
import org.stook.imaging.frame.Samples;

class JpegWriterTest {
    @TempDir
    Path folder;

    @ParameterizedTest
    @ValueSource(ints = {1, 3})
    void comesBackNearlyAsItWas(int channels) throws Exception {
        Samples samples = TestPicture.eight(120, 90, channels);
        Samples read =
                FrameReaders.read(Files.write(folder.resolve("f"), bytes(Frames.of(samples), 0.95, Optional.empty())));
        assertThat(read.channels()).isEqualTo(channels);
        assertThat(TestPicture.meanDifference(read, samples)).isLessThan(5);
    }

    @Test
    void strangersReadItProfileAndAll() throws Exception {
        byte[] profile = java.awt.color.ICC_Profile.getInstance(java.awt.color.ColorSpace.CS_sRGB)
                .getData();
        byte[] file = bytes(Frame.blank(30, 20, 3), 0.9, Optional.of(IccProfile.of(profile)));
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(file));
        assertThat(image.getWidth()).isEqualTo(30);
        assertThat(image.getRGB(4, 4)).isEqualTo(0xFF000000);
        FrameHeader header = FrameReaders.header(Files.write(folder.resolve("f"), file));
        assertThat(header.colour().profile()).contains(IccProfile.of(profile));
    }

    @Test
    void saysTheSameAsTheMaster() throws Exception {
        Path file = Files.write(folder.resolve("f"), bytes(Frame.blank(30, 20, 3), 0.9, Optional.empty()));
        Metadata metadata = JpegMetadataReader.readMetadata(file.toFile());
        Origins.assertThatFullOriginIsIn(metadata);
        assertThat(FrameReaders.header(file).pixelsPerInch()).contains(4233.5);
    }

    @Test
    void betterQualityTakesMoreBytes() throws Exception {
        Frame frame = Frames.of(TestPicture.eight(120, 90, 3));
        assertThat(bytes(frame, 0.95, Optional.empty()).length)
                .isGreaterThan(bytes(frame, 0.5, Optional.empty()).length);
    }

    @Test
    void refusesImpossibleQuality() {
        assertThatThrownBy(() -> bytes(Frame.blank(4, 4, 1), 1.5, Optional.empty()))
                .hasMessageContaining("0 to 1, got 1.5");
    }

    private static byte[] bytes(Frame frame, double quality, Optional<IccProfile> profile) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        JpegWriter.write(frame, new JpegTags(quality, profile, 4233.5, Origins.FULL), out);
        return out.toByteArray();
    }
}
