package org.stook.imaging.codec;

import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.text.Normalizer;
import java.util.Arrays;
import java.util.List;

/** One entry of a TIFF directory (TIFF 6.0, section 2): its values in file order, little endian. */
@SuppressWarnings("ArrayRecordComponent") // written out once, never compared
record TiffField(int tag, int type, int count, byte[] values) {
    private static final int BYTE = 1;
    private static final int ASCII = 2;
    private static final int SHORT = 3;
    private static final int LONG = 4;
    private static final int RATIONAL = 5;
    private static final int UNDEFINED = 7;
    /** A camera's or a person's words beyond this are no name any more, and a JPEG has little room. */
    private static final int LONGEST_TEXT = 1000;

    static TiffField bytes(int tag, byte[] values) {
        return new TiffField(tag, BYTE, values.length, values);
    }

    static TiffField undefined(int tag, byte[] values) {
        return new TiffField(tag, UNDEFINED, values.length, values);
    }

    static TiffField shorts(int tag, int... values) {
        ByteBuffer bytes = little(2 * values.length);
        for (int value : values) bytes.putShort((short) value);
        return new TiffField(tag, SHORT, values.length, bytes.array());
    }

    static TiffField longs(int tag, long... values) {
        ByteBuffer bytes = little(4 * values.length);
        for (long value : values) bytes.putInt((int) value);
        return new TiffField(tag, LONG, values.length, bytes.array());
    }

    static TiffField rational(int tag, long numerator, long denominator) {
        return new TiffField(
                tag,
                RATIONAL,
                1,
                little(8).putInt((int) numerator).putInt((int) denominator).array());
    }

    /** Letters of other scripts lose their marks or become a question mark; the XMP packet has them in full. */
    static TiffField ascii(int tag, String text) {
        String plain = Normalizer.normalize(text, Normalizer.Form.NFKD)
                .replaceAll("\\p{M}+", "")
                .replaceAll("[^\\x20-\\x7E]", "?");
        String kept = plain.substring(0, Math.min(plain.length(), LONGEST_TEXT));
        byte[] bytes = (kept + '\0').getBytes(StandardCharsets.US_ASCII);
        return new TiffField(tag, ASCII, bytes.length, bytes);
    }

    /** Bytes of a directory with its values behind it, padded to an even length. */
    static int directorySize(List<TiffField> fields) {
        int size = 2 + 12 * fields.size() + 4;
        for (TiffField field : fields) size += field.outside();
        return size;
    }

    /** Puts a directory whose fields are in ascending order, its values right behind it. */
    static void put(List<TiffField> fields, ByteBuffer file) {
        int values = file.position() + 2 + 12 * fields.size() + 4;
        file.putShort((short) fields.size());
        for (TiffField field : fields) {
            file.putShort((short) field.tag).putShort((short) field.type).putInt(field.count);
            if (field.outside() == 0) {
                file.put(Arrays.copyOf(field.values, 4));
            } else {
                file.putInt(values);
                file.put(values, field.values);
                values += field.outside();
            }
        }
        file.putInt(0); // no further directory
        file.position(values);
    }

    private int outside() {
        return values.length <= 4 ? 0 : (values.length + 1) & ~1;
    }

    private static ByteBuffer little(int size) {
        return ByteBuffer.allocate(size).order(ByteOrder.LITTLE_ENDIAN);
    }
}
