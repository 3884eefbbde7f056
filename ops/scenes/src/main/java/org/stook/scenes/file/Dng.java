package org.stook.scenes.file;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.optics.Srgb;

/**
 * Camera raw as DNG 1.4 ("Digital Negative Specification", an open publication): what a sensor behind a colour filter array
 * (red green / green blue) counts of a picture. As in most cameras' files a small preview comes first and the sensor's counts
 * lie in a sub-directory.
 */
final class Dng {
    /** Counts without light, of 2^bits. */
    private static final double BLACK = 1 / 16.0;
    /** Counts at saturation, of 2^bits. */
    private static final double WHITE = 15.5 / 16;

    private static final int PREVIEW = 8;
    private static final int HEADER = 8;

    private Dng() {}

    /** @param encoded sides are even */
    static byte[] bytes(Picture encoded, FrameFormat format, Exif exif) {
        int[] counts = counts(encoded, format.bits());
        boolean packed = format == FrameFormat.DNG_14_JPEG;
        byte[] raw = packed
                ? LosslessJpeg.bytes(counts, encoded.width(), format.bits())
                : inRows(counts, encoded.width(), format.bits());
        byte[] preview = preview(encoded);
        int first = HEADER + Exif.size(main(encoded, exif, 0, 0, 0).size(), main(encoded, exif, 0, 0, 0));
        int second = first + Exif.size(sensor(encoded, format, 0, 0).size(), sensor(encoded, format, 0, 0));
        int third = second + Exif.size(exif.shot().size(), exif.shot());
        int rawAt = third + preview.length;
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeBytes("MM");
            out.writeShort(42);
            out.writeInt(HEADER);
            Exif.directory(out, HEADER, main(encoded, exif, third, first, second));
            Exif.directory(out, first, sensor(encoded, format, rawAt, raw.length));
            Exif.directory(out, second, exif.shot());
            out.write(preview);
            out.write(raw);
        } catch (IOException e) {
            throw new UncheckedIOException("memory refused to be written", e);
        }
        return bytes.toByteArray();
    }

    /** Which colour the filter has: 0 red, 1 green, 2 blue. */
    private static int filter(int x, int y) {
        return (x & 1) + (y & 1);
    }

    private static int[] counts(Picture encoded, int bits) {
        int width = encoded.width();
        if (((width | encoded.height()) & 1) != 0) {
            throw new IllegalArgumentException(
                    "a colour filter array has even sides, got " + width + " x " + encoded.height());
        }
        long black = black(bits);
        double range = white(bits) - black;
        int[] counts = new int[width * encoded.height()];
        IntStream.range(0, encoded.height()).parallel().forEach(y -> {
            for (int x = 0; x < width; x++) {
                double red = Srgb.decode(encoded.at(0, x, y));
                double green = Srgb.decode(encoded.at(1, x, y));
                double blue = Srgb.decode(encoded.at(2, x, y));
                double count = SensorColours.count(filter(x, y), red, green, blue);
                counts[y * width + x] = (int) Math.round(black + range * count);
            }
        });
        return counts;
    }

    private static long black(int bits) {
        return Math.round(BLACK * (1 << bits));
    }

    private static long white(int bits) {
        return Math.round(WHITE * (1 << bits));
    }

    /** Not compressed: bits from the highest on, each row from a byte of its own. */
    private static byte[] inRows(int[] counts, int width, int bits) {
        BitWriter out = new BitWriter();
        for (int i = 0; i < counts.length; i++) {
            out.put(counts[i], bits);
            if ((i + 1) % width == 0) out.fill(0);
        }
        return out.bytes();
    }

    private static byte[] preview(Picture encoded) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        for (int y = 0; y < small(encoded.height()); y++) {
            for (int x = 0; x < small(encoded.width()); x++) {
                for (int c = 0; c < 3; c++) out.write((int) (encoded.at(c, PREVIEW * x, PREVIEW * y) * 255 + 0.5f));
            }
        }
        return out.toByteArray();
    }

    private static int small(int side) {
        return (side + PREVIEW - 1) / PREVIEW;
    }

    private static List<Exif.Tag> main(Picture encoded, Exif exif, int previewAt, int sensorAt, int shotAt) {
        long width = small(encoded.width());
        long height = small(encoded.height());
        List<Exif.Tag> tags = new ArrayList<>(exif.image());
        tags.addAll(List.of(
                Exif.Tag.number(254, Exif.LONG, 1L),
                Exif.Tag.number(256, Exif.LONG, width),
                Exif.Tag.number(257, Exif.LONG, height),
                Exif.Tag.number(258, Exif.SHORT, 8L, 8L, 8L),
                Exif.Tag.number(259, Exif.SHORT, 1L),
                Exif.Tag.number(262, Exif.SHORT, 2L),
                Exif.Tag.number(273, Exif.LONG, (long) previewAt),
                Exif.Tag.number(277, Exif.SHORT, 3L),
                Exif.Tag.number(278, Exif.LONG, height),
                Exif.Tag.number(279, Exif.LONG, 3 * width * height),
                Exif.Tag.number(284, Exif.SHORT, 1L),
                Exif.Tag.number(330, Exif.LONG, (long) sensorAt),
                Exif.Tag.number(Exif.EXIF_POINTER, Exif.LONG, (long) shotAt),
                Exif.Tag.number(50706, Exif.BYTE, 1L, 4L, 0L, 0L),
                Exif.Tag.number(50707, Exif.BYTE, 1L, 1L, 0L, 0L),
                Exif.Tag.text(50708, "Tarnbeck 45"),
                Exif.Tag.number(50721, Exif.SRATIONAL, SensorColours.matrix()),
                Exif.Tag.number(50728, Exif.RATIONAL, SensorColours.neutral()),
                Exif.Tag.number(50778, Exif.SHORT, 21L))); // daylight D65
        return sorted(tags);
    }

    private static List<Exif.Tag> sensor(Picture encoded, FrameFormat format, int at, int length) {
        long height = encoded.height();
        return sorted(new ArrayList<>(List.of(
                Exif.Tag.number(254, Exif.LONG, 0L),
                Exif.Tag.number(256, Exif.LONG, (long) encoded.width()),
                Exif.Tag.number(257, Exif.LONG, height),
                Exif.Tag.number(258, Exif.SHORT, (long) format.bits()),
                Exif.Tag.number(259, Exif.SHORT, format == FrameFormat.DNG_14_JPEG ? 7L : 1L),
                Exif.Tag.number(262, Exif.SHORT, 32803L),
                Exif.Tag.number(273, Exif.LONG, (long) at),
                Exif.Tag.number(277, Exif.SHORT, 1L),
                Exif.Tag.number(278, Exif.LONG, height),
                Exif.Tag.number(279, Exif.LONG, (long) length),
                Exif.Tag.number(284, Exif.SHORT, 1L),
                Exif.Tag.number(33421, Exif.SHORT, 2L, 2L),
                Exif.Tag.number(33422, Exif.BYTE, 0L, 1L, 1L, 2L),
                Exif.Tag.number(50710, Exif.BYTE, 0L, 1L, 2L),
                Exif.Tag.number(50711, Exif.SHORT, 1L),
                Exif.Tag.number(50714, Exif.LONG, black(format.bits())),
                Exif.Tag.number(50717, Exif.LONG, white(format.bits())))));
    }

    private static List<Exif.Tag> sorted(List<Exif.Tag> tags) {
        tags.sort((a, b) -> Integer.compare(a.number(), b.number()));
        return tags;
    }
}
