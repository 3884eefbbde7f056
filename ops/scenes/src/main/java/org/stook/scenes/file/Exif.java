package org.stook.scenes.file;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Stream;

/**
 * The Exif tags of a frame (CIPA DC-008, Exif 2.32), and their bytes for JPEG. Tags stand in ascending order, as TIFF 6.0
 * demands.
 */
record Exif(List<Tag> image, List<Tag> shot) {
    static final int EXIF_POINTER = 0x8769;
    static final int ASCII = 2;
    static final int SHORT = 3;
    static final int LONG = 4;
    static final int RATIONAL = 5;
    static final int UNDEFINED = 7;
    static final int BYTE = 1;
    static final int SRATIONAL = 10;

    private static final DateTimeFormatter SECONDS = DateTimeFormatter.ofPattern("yyyy:MM:dd HH:mm:ss");
    private static final DateTimeFormatter MILLIS = DateTimeFormatter.ofPattern("SSS");
    private static final DateTimeFormatter OFFSET = DateTimeFormatter.ofPattern("xxx");
    private static final int ENTRY = 12;

    /** One tag: its number, TIFF type and either text (ASCII, UNDEFINED) or numbers. */
    record Tag(int number, int type, String text, List<Long> numbers) {
        static Tag text(int number, String text) {
            return new Tag(number, ASCII, text, List.of());
        }

        static Tag number(int number, int type, Long... numbers) {
            return new Tag(number, type, "", List.of(numbers));
        }

        int count() {
            return switch (type) {
                case ASCII -> text.length() + 1;
                case UNDEFINED -> text.length();
                case RATIONAL, SRATIONAL -> numbers.size() / 2;
                default -> numbers.size();
            };
        }

        byte[] bytes() {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            out.writeBytes(text.getBytes(StandardCharsets.US_ASCII));
            if (type == ASCII) out.write(0);
            for (long n : numbers) {
                for (int shift = highest(); shift >= 0; shift -= 8) out.write((int) (n >> shift));
            }
            return out.toByteArray();
        }

        private int highest() {
            return switch (type) {
                case BYTE -> 0;
                case SHORT -> 8;
                default -> 24;
            };
        }
    }

    static Exif of(Capture capture) {
        Camera camera = capture.camera();
        String taken = SECONDS.format(capture.taken());
        List<Tag> image = List.of(
                Tag.text(0x010F, camera.make()),
                Tag.text(0x0110, camera.model()),
                Tag.number(0x0112, SHORT, 1L),
                Tag.text(0x0132, taken));
        List<Tag> shot = List.of(
                Tag.number(0x829A, RATIONAL, 1L, (long) camera.exposure()),
                Tag.number(0x829D, RATIONAL, Math.round(capture.lens().fNumber() * 10), 10L),
                Tag.number(0x8827, SHORT, (long) camera.iso()),
                new Tag(0x9000, UNDEFINED, "0232", List.of()),
                Tag.text(0x9003, taken),
                Tag.text(0x9011, OFFSET.format(capture.taken())),
                Tag.number(0x920A, RATIONAL, Math.round(capture.lens().focalLength() * 10), 10L),
                Tag.text(0x9291, MILLIS.format(capture.taken())),
                Tag.number(0xA001, SHORT, 1L),
                Tag.text(0xA431, camera.serial()));
        return new Exif(image, shot);
    }

    /** The APP1 segment of a JPEG file, marker and length included. */
    byte[] segment() {
        byte[] tiff = tiff();
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeShort(0xFFE1);
            out.writeShort(2 + 6 + tiff.length);
            out.writeBytes("Exif\0\0");
            out.write(tiff);
        } catch (IOException e) {
            throw new UncheckedIOException("memory refused to be written", e);
        }
        return bytes.toByteArray();
    }

    private byte[] tiff() {
        int shotAt = 8 + size(image.size() + 1, image);
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeBytes("MM");
            out.writeShort(42);
            out.writeInt(8);
            Tag pointer = Tag.number(EXIF_POINTER, LONG, (long) shotAt);
            directory(out, 8, Stream.concat(image.stream(), Stream.of(pointer)).toList());
            directory(out, shotAt, shot);
        } catch (IOException e) {
            throw new UncheckedIOException("memory refused to be written", e);
        }
        return bytes.toByteArray();
    }

    /** Bytes of a directory of so many entries, with the values of these tags behind it. */
    static int size(int entries, List<Tag> tags) {
        return 2
                + entries * ENTRY
                + 4
                + tags.stream().mapToInt(t -> outside(t.bytes())).sum();
    }

    /** Bytes that do not fit into the entry, on an even count. */
    private static int outside(byte[] value) {
        return value.length <= 4 ? 0 : value.length + (value.length & 1);
    }

    /** Writes a directory that begins at byte {@code at} of the file, and its values behind it. */
    static void directory(DataOutputStream out, int at, List<Tag> tags) throws IOException {
        int free = at + 2 + tags.size() * ENTRY + 4;
        ByteArrayOutputStream values = new ByteArrayOutputStream();
        out.writeShort(tags.size());
        for (Tag tag : tags) {
            byte[] value = tag.bytes();
            out.writeShort(tag.number());
            out.writeShort(tag.type());
            out.writeInt(tag.count());
            if (value.length <= 4) {
                out.write(Arrays.copyOf(value, 4));
            } else {
                out.writeInt(free + values.size());
                values.writeBytes(Arrays.copyOf(value, outside(value)));
            }
        }
        out.writeInt(0);
        out.write(values.toByteArray());
    }
}
