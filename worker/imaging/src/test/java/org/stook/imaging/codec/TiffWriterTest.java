package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.drew.imaging.tiff.TiffMetadataReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import java.awt.image.Raster;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.util.HexFormat;
import java.util.Optional;
import javax.imageio.ImageIO;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.IccProfile;
import org.stook.imaging.frame.Samples;

class TiffWriterTest {
    private static final TiffTags SIXTEEN = TiffTags.sixteenBit(Optional.empty(), "Stook");

    @TempDir
    Path folder;

    /** The Java runtime's reader as the reader from outside. */
    @ParameterizedTest
    @CsvSource({"8, 1", "8, 3", "16, 1", "16, 3"})
    void isReadAlikeByTheRuntimeAndByOurReader(int bits, int channels) throws Exception {
        Samples samples = bits == 8 ? TestPicture.eight(300, 210, channels) : TestPicture.sixteen(300, 210, channels);
        TiffTags tags = new TiffTags(bits, Optional.empty(), 300, Origin.of("Stook"));
        byte[] file = bytes(Frames.of(samples), tags);
        Raster raster = ImageIO.read(new ByteArrayInputStream(file)).getRaster();
        assertThat(raster.getPixels(0, 0, 300, 210, (int[]) null)).isEqualTo(TestPicture.codes(samples));
        Samples ours = FrameReaders.read(Files.write(folder.resolve("f.tif"), file));
        assertThat(TestPicture.codes(ours)).isEqualTo(TestPicture.codes(samples));
    }

    @Test
    void everyCodeComesBack() throws Exception {
        short[] codes = new short[65536];
        for (int i = 0; i < codes.length; i++) codes[i] = (short) i;
        Samples all = new Samples.Sixteen(256, 256, 1, codes);
        Path file = Files.write(folder.resolve("f.tif"), bytes(Frames.of(all), SIXTEEN));
        assertThat(TestPicture.codes(FrameReaders.read(file))).isEqualTo(TestPicture.codes(all));
    }

    @ParameterizedTest
    @CsvSource({"-0.5, 0", "0.00000762, 0", "0.00000764, 1", "0.5, 32768", "1, 65535", "7, 65535", "NaN, 0"})
    void roundsHalfUpAndClips(float value, int code) {
        assertThat(TiffWriter.code(value, 65535)).isEqualTo(code);
    }

    @Test
    void saysWhatItIs() throws Exception {
        IccProfile profile = IccProfile.of(new byte[] {1, 2, 3, 4, 5, 6, 7});
        TiffTags tags = new TiffTags(16, Optional.of(profile), 4233.5, Origins.FULL);
        Path file = Files.write(folder.resolve("f.tif"), bytes(Frame.blank(9, 7, 3), tags));
        Metadata metadata = TiffMetadataReader.readMetadata(file.toFile());
        ExifIFD0Directory main = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        assertThat(main.getString(ExifIFD0Directory.TAG_SOFTWARE)).isEqualTo("Stook 0.1.0");
        assertThat(main.getDescription(ExifIFD0Directory.TAG_DATETIME))
                .as("the wall clock is not in it")
                .isNull();
        Origins.assertThatFullOriginIsIn(metadata);
        assertThat(main.getDouble(ExifIFD0Directory.TAG_X_RESOLUTION)).isEqualTo(4233.5);
        assertThat(main.getDouble(ExifIFD0Directory.TAG_Y_RESOLUTION)).isEqualTo(4233.5);
        assertThat(main.getInt(ExifIFD0Directory.TAG_RESOLUTION_UNIT)).isEqualTo(2);
        FrameHeader header = FrameReaders.header(file);
        assertThat(header.colour().profile()).contains(profile);
        assertThat(header.pixelsPerInch()).contains(4233.5);
    }

    @Test
    void writesOnlyTheArea() throws Exception {
        Samples samples = TestPicture.sixteen(40, 30, 3);
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TiffWriter.write(Frames.of(samples), new Area(5, 7, 20, 11), SIXTEEN, out);
        Samples part = FrameReaders.read(Files.write(folder.resolve("f.tif"), out.toByteArray()));
        assertThat(part.width()).isEqualTo(20);
        assertThat(part.height()).isEqualTo(11);
        assertThat(part.code(0, 0, 1)).isEqualTo(samples.code(5, 7, 1));
        assertThat(part.code(19, 10, 2)).isEqualTo(samples.code(24, 17, 2));
    }

    /** Pinned, so that a change of a single byte, by whatever runtime or edit, is noticed. */
    @Test
    void bytesAreTheSameForEver() throws Exception {
        byte[] file = bytes(Frames.of(TestPicture.sixteen(40, 30, 3)), SIXTEEN.from(Origins.FULL));
        String digest =
                HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(file));
        assertThat(digest).isEqualTo("55b652783f31d170a4285d89142ac508b77fbe300721614d6b12942451b8d4dc");
    }

    @Test
    void refusesWhatCannotBeWritten() {
        Frame frame = Frame.blank(4, 4, 1);
        assertThatThrownBy(() -> TiffWriter.write(frame, new Area(1, 1, 4, 3), SIXTEEN, new ByteArrayOutputStream()))
                .hasMessageContaining("beyond a frame of 4 x 4");
        assertThatThrownBy(() -> new TiffTags(12, Optional.empty(), 300, Origin.of("")))
                .hasMessageContaining("8 or 16 bit, got 12");
        assertThatThrownBy(() -> new Origin.Composite(3, 5)).hasMessageContaining("5 of 3");
        assertThatThrownBy(() -> SIXTEEN.at(0)).hasMessageContaining("1 to 1000000");
    }

    private static byte[] bytes(Frame frame, TiffTags tags) throws Exception {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        TiffWriter.write(frame, tags, out);
        return out.toByteArray();
    }
}
