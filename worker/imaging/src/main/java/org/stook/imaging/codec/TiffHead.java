package org.stook.imaging.codec;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.IccProfile;

/** All of a written TIFF that comes before its pixels: header, directory, Exif directory, values. */
final class TiffHead {
    private static final DateTimeFormatter TIFF_TIME = DateTimeFormatter.ofPattern("uuuu:MM:dd HH:mm:ss", Locale.ROOT);
    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int UNDEFINED = 7;
    private static final int RESOLUTION_DENOMINATOR = 1000;
    private static final int STRIP_OFFSETS = 273;
    private static final int EXIF_IFD = 34665;

    /** One entry of a directory: its values in file order. */
    @SuppressWarnings("ArrayRecordComponent") // written out once, never compared
    private record Field(int tag, int type, int count, byte[] values) {}

    private TiffHead() {}

    static byte[] of(Area area, int channels, int rowsPerStrip, TiffTags tags) {
        int strips = (area.height() + rowsPerStrip - 1) / rowsPerStrip;
        long rowBytes = (long) area.width() * channels * tags.bitsPerSample() / 8;
        List<Field> fields = fields(area, channels, tags);
        fields.add(longs(278, rowsPerStrip));
        long[] sizes = new long[strips];
        for (int i = 0; i < strips; i++) {
            sizes[i] = rowBytes * Math.min(rowsPerStrip, area.height() - i * rowsPerStrip);
        }
        fields.add(longs(279, sizes));
        List<Field> exif = exif(tags);
        // Offsets have a fixed size: place the values first with blanks, then again with what came out.
        fields.add(longs(STRIP_OFFSETS, new long[strips]));
        if (!exif.isEmpty()) fields.add(longs(EXIF_IFD, 0));
        fields.sort(Comparator.comparingInt(Field::tag));
        int exifAt = 8 + directorySize(fields);
        int pixelsAt = exif.isEmpty() ? exifAt : exifAt + directorySize(exif);
        fields.replaceAll(field -> switch (field.tag) {
            case STRIP_OFFSETS -> longs(STRIP_OFFSETS, offsets(pixelsAt, sizes));
            case EXIF_IFD -> longs(EXIF_IFD, exifAt);
            default -> field;
        });
        ByteBuffer head = ByteBuffer.allocate(pixelsAt).order(ByteOrder.LITTLE_ENDIAN);
        head.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
        put(fields, head);
        if (!exif.isEmpty()) put(exif, head);
        return head.array();
    }

    private static List<Field> fields(Area area, int channels, TiffTags tags) {
        List<Field> fields = new ArrayList<>();
        fields.add(longs(254, 0)); // a full picture
        fields.add(longs(256, area.width()));
        fields.add(longs(257, area.height()));
        int[] bits = new int[channels];
        java.util.Arrays.fill(bits, tags.bitsPerSample());
        fields.add(shorts(258, bits));
        fields.add(shorts(259, 1)); // uncompressed
        fields.add(shorts(262, channels == 3 ? 2 : 1)); // RGB, or grey with black as zero
        fields.add(shorts(274, 1)); // upright
        fields.add(shorts(277, channels));
        int resolution = (int) Math.round(tags.pixelsPerInch() * RESOLUTION_DENOMINATOR);
        fields.add(rational(282, resolution));
        fields.add(rational(283, resolution));
        fields.add(shorts(284, 1)); // interleaved
        fields.add(shorts(296, 2)); // per inch
        if (!tags.software().isEmpty()) fields.add(ascii(305, tags.software()));
        tags.written().ifPresent(time -> fields.add(ascii(306, TIFF_TIME.format(time))));
        tags.profile()
                .map(IccProfile::bytes)
                .ifPresent(icc -> fields.add(new Field(34675, UNDEFINED, icc.length, icc)));
        return fields;
    }

    private static List<Field> exif(TiffTags tags) {
        return tags.composite()
                .map(sources -> List.of(
                        new Field(0x9000, UNDEFINED, 4, "0232".getBytes(StandardCharsets.US_ASCII)),
                        shorts(0xA460, 2),
                        shorts(0xA461, sources.frames(), sources.used())))
                .orElse(List.of());
    }

    private static long[] offsets(long first, long[] sizes) {
        long[] offsets = new long[sizes.length];
        long at = first;
        for (int i = 0; i < sizes.length; i++) {
            offsets[i] = at;
            at += sizes[i];
        }
        if (at > 0xFFFFFFFFL) {
            throw new IllegalArgumentException("a classic TIFF ends at 4 GiB, this one would have " + at + " bytes");
        }
        return offsets;
    }

    /** Bytes of a directory with its values behind it, padded to an even length. */
    private static int directorySize(List<Field> fields) {
        int size = 2 + 12 * fields.size() + 4;
        for (Field field : fields) size += outside(field);
        return size;
    }

    private static int outside(Field field) {
        return field.values.length <= 4 ? 0 : (field.values.length + 1) & ~1;
    }

    private static void put(List<Field> fields, ByteBuffer head) {
        int values = head.position() + 2 + 12 * fields.size() + 4;
        head.putShort((short) fields.size());
        for (Field field : fields) {
            head.putShort((short) field.tag).putShort((short) field.type).putInt(field.count);
            if (outside(field) == 0) {
                head.put(java.util.Arrays.copyOf(field.values, 4));
            } else {
                head.putInt(values);
                head.put(values, field.values);
                values += outside(field);
            }
        }
        head.putInt(0); // no further directory
        head.position(values);
    }

    private static Field shorts(int tag, int... values) {
        ByteBuffer bytes = ByteBuffer.allocate(2 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (int value : values) bytes.putShort((short) value);
        return new Field(tag, SHORT, values.length, bytes.array());
    }

    private static Field longs(int tag, long... values) {
        ByteBuffer bytes = ByteBuffer.allocate(4 * values.length).order(ByteOrder.LITTLE_ENDIAN);
        for (long value : values) bytes.putInt((int) value);
        return new Field(tag, LONG, values.length, bytes.array());
    }

    private static Field rational(int tag, int thousandths) {
        ByteBuffer bytes = ByteBuffer.allocate(8).order(ByteOrder.LITTLE_ENDIAN);
        bytes.putInt(thousandths).putInt(RESOLUTION_DENOMINATOR);
        return new Field(tag, RATIONAL, 1, bytes.array());
    }

    private static Field ascii(int tag, String text) {
        byte[] bytes = (text + '\0').getBytes(StandardCharsets.US_ASCII);
        return new Field(tag, ASCII, bytes.length, bytes);
    }
}
