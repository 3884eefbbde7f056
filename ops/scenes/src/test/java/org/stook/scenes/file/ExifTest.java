package org.stook.scenes.file;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.imaging.ImageMetadataReader;
import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.icc.IccDirectory;
import java.io.ByteArrayInputStream;
import java.time.OffsetDateTime;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.stook.scenes.optics.Lens;

/** Read back by a library that has nothing to do with the writer. */
class ExifTest {
    private static final OffsetDateTime TAKEN = OffsetDateTime.parse("2026-03-02T09:00:07.250+01:00");

    @ParameterizedTest
    @EnumSource(FrameFormat.class)
    void everyFormatTellsTheCapture(FrameFormat format) throws Exception {
        Metadata metadata = read(format);
        ExifIFD0Directory image = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        assertThat(image.getString(ExifIFD0Directory.TAG_MAKE)).isEqualTo("Tarnbeck");
        assertThat(image.getString(ExifIFD0Directory.TAG_MODEL)).isEqualTo("Tarnbeck 45");
        ExifSubIFDDirectory shot = metadata.getDirectoriesOfType(ExifSubIFDDirectory.class).stream()
                .filter(directory -> directory.containsTag(ExifSubIFDDirectory.TAG_DATETIME_ORIGINAL))
                .findFirst()
                .orElseThrow();
        assertThat(shot.getDateOriginal().toInstant()).isEqualTo(TAKEN.toInstant());
        assertThat(shot.getString(ExifSubIFDDirectory.TAG_SUBSECOND_TIME_ORIGINAL))
                .isEqualTo("250");
        assertThat(shot.getString(ExifSubIFDDirectory.TAG_TIME_ZONE_ORIGINAL)).isEqualTo("+01:00");
        assertThat(shot.getString(ExifSubIFDDirectory.TAG_BODY_SERIAL_NUMBER)).isEqualTo("TB4500117");
        assertThat(shot.getDouble(ExifSubIFDDirectory.TAG_FNUMBER)).isEqualTo(4);
        assertThat(shot.getDouble(ExifSubIFDDirectory.TAG_FOCAL_LENGTH)).isEqualTo(100);
        assertThat(shot.getDouble(ExifSubIFDDirectory.TAG_EXPOSURE_TIME)).isEqualTo(1 / 60.0);
        assertThat(shot.getInt(ExifSubIFDDirectory.TAG_ISO_EQUIVALENT)).isEqualTo(100);
    }

    @Test
    void tiffCarriesAProfile() throws Exception {
        assertThat(read(FrameFormat.TIFF_16).getFirstDirectoryOfType(IccDirectory.class))
                .isNotNull();
    }

    private static Metadata read(FrameFormat format) throws Exception {
        byte[] bytes =
                FrameWriter.bytes(FrameWriterTest.ramp(), format, new Capture(Camera.USUAL, new Lens(100, 4), TAKEN));
        return ImageMetadataReader.readMetadata(new ByteArrayInputStream(bytes));
    }
}
