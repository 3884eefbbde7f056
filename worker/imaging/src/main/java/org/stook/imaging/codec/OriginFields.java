package org.stook.imaging.codec;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** An {@link Origin} as fields of a TIFF directory and its Exif directory (CIPA DC-008-2019, Exif 2.32). */
final class OriginFields {
    private static final DateTimeFormatter TIFF_TIME = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);
    private static final DateTimeFormatter FRACTION = DateTimeFormatter.ofPattern("SSS", Locale.ROOT);
    private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xxx", Locale.ROOT);
    private static final int MICRO = 1_000_000;
    /** ColorSpace: the embedded profile says what the colours are. */
    private static final int UNCALIBRATED = 0xFFFF;

    private OriginFields() {}

    /** For the main directory. */
    static List<TiffField> main(Origin origin) {
        List<TiffField> fields = new ArrayList<>();
        Caption caption = origin.caption();
        Capture.Camera camera = origin.capture().camera();
        caption.title().ifPresent(title -> fields.add(TiffField.ascii(270, title)));
        camera.make().ifPresent(make -> fields.add(TiffField.ascii(271, make)));
        camera.model().ifPresent(model -> fields.add(TiffField.ascii(272, model)));
        if (!origin.software().isEmpty()) fields.add(TiffField.ascii(305, origin.software()));
        caption.creator().ifPresent(creator -> fields.add(TiffField.ascii(315, creator)));
        caption.rights().ifPresent(rights -> fields.add(TiffField.ascii(33432, rights)));
        return fields;
    }

    /** For the Exif directory: how the reference frame was taken, and of what the picture is composed. */
    static List<TiffField> exif(Origin origin) {
        List<TiffField> fields = new ArrayList<>();
        Capture capture = origin.capture();
        capture.exposureSeconds()
                .filter(OriginFields::sensible)
                .ifPresent(seconds -> fields.add(decimal(0x829A, seconds)));
        capture.fNumber().filter(OriginFields::sensible).ifPresent(number -> fields.add(decimal(0x829D, number)));
        capture.iso()
                .filter(iso -> iso > 0 && iso <= 0xFFFF)
                .ifPresent(iso -> fields.add(TiffField.shorts(0x8827, iso)));
        fields.add(TiffField.undefined(0x9000, "0232".getBytes(US_ASCII)));
        fields.add(TiffField.undefined(0xA000, "0100".getBytes(US_ASCII)));
        fields.add(TiffField.shorts(0xA001, UNCALIBRATED));
        capture.time().ifPresent(time -> {
            fields.add(TiffField.ascii(0x9003, TIFF_TIME.format(time.local())));
            time.offset().ifPresent(offset -> fields.add(TiffField.ascii(0x9011, OFFSET.format(offset))));
            if (time.local().getNano() != 0) fields.add(TiffField.ascii(0x9291, FRACTION.format(time.local())));
        });
        capture.focalLength().filter(OriginFields::sensible).ifPresent(length -> fields.add(decimal(0x920A, length)));
        capture.camera().serial().ifPresent(serial -> fields.add(TiffField.ascii(0xA431, serial)));
        origin.composite().ifPresent(sources -> {
            fields.add(TiffField.shorts(0xA460, 2));
            fields.add(TiffField.shorts(0xA461, sources.frames(), sources.used()));
        });
        fields.sort(Comparator.comparingInt(TiffField::tag));
        return fields;
    }

    private static boolean sensible(double value) {
        return value > 0 && value < 1e6;
    }

    /** As n/1 or 1/n where it is that nearly, else in millionths; cameras say 1/250, and so do we. */
    private static TiffField decimal(int tag, double value) {
        double inverse = 1 / value;
        if (value < 1 && Math.abs(inverse - Math.rint(inverse)) < 1e-6 * inverse) {
            return TiffField.rational(tag, 1, Math.round(inverse));
        }
        for (int denominator : new int[] {1, 10, 100, 1000}) {
            double scaled = value * denominator;
            if (Math.abs(scaled - Math.rint(scaled)) < 1e-9 * scaled) {
                return TiffField.rational(tag, Math.round(scaled), denominator);
            }
        }
        return value < 4000
                ? TiffField.rational(tag, Math.round(value * MICRO), MICRO)
                : TiffField.rational(tag, Math.round(value), 1);
    }
}
