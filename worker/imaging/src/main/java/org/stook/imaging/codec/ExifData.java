package org.stook.imaging.codec;

import com.drew.imaging.ImageMetadataReader;
import com.drew.imaging.jpeg.JpegMetadataReader;
import com.drew.imaging.tiff.TiffMetadataReader;
import com.drew.metadata.Directory;
import com.drew.metadata.Metadata;
import com.drew.metadata.MetadataException;
import com.drew.metadata.exif.ExifDirectoryBase;
import com.drew.metadata.exif.ExifIFD0Directory;
import com.drew.metadata.exif.ExifInteropDirectory;
import com.drew.metadata.exif.ExifReader;
import com.drew.metadata.exif.ExifSubIFDDirectory;
import com.drew.metadata.jfif.JfifDirectory;
import com.drew.metadata.jfif.JfifReader;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * The few Exif and JFIF values a frame needs. Metadata is a courtesy of the file: whatever is missing, malformed or makes
 * the parser stumble is simply not known, and never a reason to refuse the picture.
 */
final class ExifData {
    private static final DateTimeFormatter EXIF_TIME = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);
    private static final double CENTIMETRES_PER_INCH = 2.54;

    private final Metadata metadata;

    private ExifData(Metadata metadata) {
        this.metadata = metadata;
    }

    static ExifData ofJpeg(byte[] file) {
        return parsed(() -> JpegMetadataReader.readMetadata(
                new ByteArrayInputStream(file), List.of(new ExifReader(), new JfifReader())));
    }

    static ExifData ofTiff(Path file) {
        return parsed(() -> TiffMetadataReader.readMetadata(file.toFile()));
    }

    static ExifData ofRaw(Path file) {
        return parsed(() -> ImageMetadataReader.readMetadata(file.toFile()));
    }

    private interface Parse {
        Metadata metadata() throws Exception;
    }

    @SuppressWarnings("CatchAndPrintStackTrace")
    private static ExifData parsed(Parse parse) {
        try {
            return new ExifData(parse.metadata());
        } catch (Exception unreadableMetadata) { // any kind: see the class comment
            return new ExifData(new Metadata());
        }
    }

    /** 1 to 8; 1 if nothing sensible is said. */
    int orientation() {
        int found = number(ExifIFD0Directory.class, ExifDirectoryBase.TAG_ORIENTATION)
                .map(Double::intValue)
                .orElse(1);
        return found >= 1 && found <= 8 ? found : 1;
    }

    FrameHeader.Declared declaredColour() {
        Optional<String> interoperability = text(ExifInteropDirectory.class, ExifDirectoryBase.TAG_INTEROP_INDEX);
        if (interoperability.filter("R03"::equals).isPresent()) return FrameHeader.Declared.ADOBE_RGB;
        return number(ExifSubIFDDirectory.class, ExifDirectoryBase.TAG_COLOR_SPACE)
                .filter(space -> space == 1)
                .map(space -> FrameHeader.Declared.SRGB)
                .orElse(FrameHeader.Declared.NOTHING);
    }

    Optional<Double> pixelsPerInch() {
        Optional<Double> exif = perInch(
                number(ExifIFD0Directory.class, ExifDirectoryBase.TAG_X_RESOLUTION),
                number(ExifIFD0Directory.class, ExifDirectoryBase.TAG_RESOLUTION_UNIT)
                        .orElse(2.0),
                2);
        return exif.or(() -> perInch(
                number(JfifDirectory.class, JfifDirectory.TAG_RESX),
                number(JfifDirectory.class, JfifDirectory.TAG_UNITS).orElse(0.0),
                1));
    }

    private static Optional<Double> perInch(Optional<Double> resolution, double unit, int inch) {
        return resolution
                .filter(r -> r > 0 && (unit == inch || unit == inch + 1))
                .map(r -> unit == inch ? r : r * CENTIMETRES_PER_INCH);
    }

    Capture capture() {
        Class<ExifSubIFDDirectory> sub = ExifSubIFDDirectory.class;
        return new Capture(
                time(),
                new Capture.Camera(
                        text(ExifIFD0Directory.class, ExifDirectoryBase.TAG_MAKE),
                        text(ExifIFD0Directory.class, ExifDirectoryBase.TAG_MODEL),
                        text(sub, ExifDirectoryBase.TAG_BODY_SERIAL_NUMBER)),
                number(sub, ExifDirectoryBase.TAG_EXPOSURE_TIME).filter(s -> s > 0),
                number(sub, ExifDirectoryBase.TAG_FNUMBER).filter(n -> n > 0),
                number(sub, ExifDirectoryBase.TAG_ISO_EQUIVALENT)
                        .filter(iso -> iso > 0)
                        .map(Double::intValue),
                number(sub, ExifDirectoryBase.TAG_FOCAL_LENGTH).filter(mm -> mm > 0));
    }

    private Optional<CaptureTime> time() {
        Class<ExifSubIFDDirectory> sub = ExifSubIFDDirectory.class;
        return text(sub, ExifDirectoryBase.TAG_DATETIME_ORIGINAL).flatMap(written -> {
            try {
                LocalDateTime second = LocalDateTime.parse(written, EXIF_TIME);
                int nanos = nanos(
                        text(sub, ExifDirectoryBase.TAG_SUBSECOND_TIME_ORIGINAL).orElse(""));
                return Optional.of(new CaptureTime(second.withNano(nanos), offset()));
            } catch (DateTimeException notATime) {
                return Optional.empty();
            }
        });
    }

    private Optional<ZoneOffset> offset() {
        return text(ExifSubIFDDirectory.class, ExifDirectoryBase.TAG_TIME_ZONE_ORIGINAL)
                .flatMap(written -> {
                    try {
                        return Optional.of(ZoneOffset.of(written));
                    } catch (DateTimeException notAnOffset) {
                        return Optional.empty();
                    }
                });
    }

    /** "7" is 0.7 s, "07" is 0.07 s: the digits follow the decimal point. */
    private static int nanos(String digits) {
        if (!digits.matches("[0-9]{1,20}")) return 0;
        return Integer.parseInt((digits + "000000000").substring(0, 9));
    }

    private <T extends Directory> Optional<Double> number(Class<T> kind, int tag) {
        for (T directory : metadata.getDirectoriesOfType(kind)) {
            if (!directory.containsTag(tag)) continue;
            try {
                double value = directory.getDouble(tag);
                if (Double.isFinite(value)) return Optional.of(value);
            } catch (MetadataException notANumber) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private <T extends Directory> Optional<String> text(Class<T> kind, int tag) {
        for (T directory : metadata.getDirectoriesOfType(kind)) {
            String value = directory.getString(tag);
            if (value != null && !value.isBlank()) return Optional.of(value.strip());
        }
        return Optional.empty();
    }
}
