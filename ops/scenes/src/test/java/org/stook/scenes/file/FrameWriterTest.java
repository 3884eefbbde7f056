package org.stook.scenes.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.time.OffsetDateTime;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.optics.Lens;

class FrameWriterTest {
    private static final Capture CAPTURE =
            new Capture(Camera.USUAL, new Lens(100, 4), OffsetDateTime.parse("2026-03-02T09:00:07.250+01:00"));

    @ParameterizedTest
    @EnumSource(names = {"JPEG", "JPEG_420", "TIFF_8", "TIFF_16"})
    void platformReadsThePictureBack(FrameFormat format) throws IOException {
        byte[] bytes = FrameWriter.bytes(ramp(), format, CAPTURE);
        BufferedImage image = ImageIO.read(new ByteArrayInputStream(bytes));
        assertThat(image.getWidth()).isEqualTo(64);
        assertThat(image.getHeight()).isEqualTo(48);
        assertThat(image.getSampleModel().getSampleSize(0)).isEqualTo(format.bits());
        int full = (1 << format.bits()) - 1;
        int[] pixel = image.getRaster().getPixel(32, 20, new int[3]);
        assertThat(pixel[0] / (double) full).isBetween(0.49, 0.53);
        assertThat(pixel[2] / (double) full).isBetween(0.23, 0.27);
    }

    @Test
    void sameBytesEveryTime() {
        for (FrameFormat format : FrameFormat.values()) {
            assertThat(FrameWriter.bytes(ramp(), format, CAPTURE))
                    .isEqualTo(FrameWriter.bytes(ramp(), format, CAPTURE));
        }
    }

    static Picture ramp() {
        Picture picture = Picture.black(64, 48);
        for (int p = 0; p < 64 * 48; p++) {
            picture.planes()[0][p] = (p % 64) / 63f;
            picture.planes()[1][p] = 0.5f;
            picture.planes()[2][p] = 0.25f;
        }
        return picture;
    }
}
