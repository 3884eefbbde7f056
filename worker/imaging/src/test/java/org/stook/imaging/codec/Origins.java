package org.stook.imaging.codec;

import static org.assertj.core.api.Assertions.assertThat;

import com.drew.metadata.Metadata;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.xmp.XmpDirectory;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.OptionalDouble;

/** An origin with everything in it, and how a reader from outside finds it again (metadata-extractor, with Adobe's XMP core). */
final class Origins {
    static final Origin FULL = new Origin(
            "Stook 0.1.0",
            new Caption(
                    Optional.of("Fluorit <7> aus Gr\u00e4fenberg & Umgebung \u86cd\u77f3"),
                    Optional.of("Ada"),
                    Optional.of("\u00a9 2026 An invented museum"),
                    OptionalDouble.of(2.125)),
            new Capture(
                    Optional.of(new CaptureTime(
                            LocalDateTime.of(2026, 3, 14, 15, 9, 26, 530_000_000), Optional.of(ZoneOffset.ofHours(1)))),
                    new Capture.Camera(Optional.of("Acme"), Optional.of("Model 9"), Optional.of("12345")),
                    Optional.of(1 / 250.0),
                    Optional.of(5.6),
                    Optional.of(100),
                    Optional.of(65.0)),
            Optional.of(new Origin.Composite(24, 22)));

    private Origins() {}

    static void assertThatFullOriginIsIn(Metadata metadata) throws Exception {
        ExifIFD0Directory main = metadata.getFirstDirectoryOfType(ExifIFD0Directory.class);
        assertThat(main.getString(0x10E)).isEqualTo("Fluorit <7> aus Grafenberg & Umgebung ??");
        assertThat(main.getString(0x10F)).isEqualTo("Acme");
        assertThat(main.getString(0x13B)).isEqualTo("Ada");
        ExifSubIFDDirectory exif = metadata.getFirstDirectoryOfType(ExifSubIFDDirectory.class);
        // CIPA DC-008-2019 (Exif 2.32): 2 = general composite image; frames shot, frames used.
        assertThat(exif.getInt(0xA460)).isEqualTo(2);
        assertThat(exif.getIntArray(0xA461)).containsExactly(24, 22);
        assertThat(exif.getString(0x9003)).isEqualTo("2026:03:14 15:09:26");
        assertThat(exif.getString(0x9011)).isEqualTo("+01:00");
        assertThat(exif.getRational(0x829A).toString()).isEqualTo("1/250");
        assertThat(exif.getDouble(0x829D)).isEqualTo(5.6);
        assertThat(exif.getInt(0x8827)).isEqualTo(100);
        assertThat(metadata.getFirstDirectoryOfType(XmpDirectory.class).getXmpProperties())
                .containsEntry("dc:title[1]", "Fluorit <7> aus Gr\u00e4fenberg & Umgebung \u86cd\u77f3")
                .containsEntry("dc:rights[1]", "\u00a9 2026 An invented museum")
                .containsEntry(
                        "Iptc4xmpExt:DigitalSourceType",
                        "http://cv.iptc.org/newscodes/digitalsourcetype/computationalCapture")
                .containsEntry("stook:PixelSizeMicrometres", "2.125");
    }
}
