package org.stook.imaging.codec;

import static java.nio.charset.StandardCharsets.US_ASCII;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.stook.imaging.frame.Frame;

/** Exif (CIPA DC-008-2019) and XMP (ISO 16684-3) in the APP1 segments of a JPEG. */
final class JpegMetadata {
    private static final byte[] EXIF = "Exif\0\0".getBytes(US_ASCII);
    private static final byte[] XMP = "http://ns.adobe.com/xap/1.0/\0".getBytes(US_ASCII);
    private static final int EXIF_IFD = 34665;
    /** A segment's length field counts 65535 at most, itself included. */
    private static final int LARGEST = 65535 - 2;

    private JpegMetadata() {}

    static void write(Frame frame, JpegTags tags, OutputStream out) throws IOException {
        segment(EXIF, exif(frame, tags), out);
        segment(XMP, XmpPacket.of(tags.origin(), "image/jpeg"), out);
    }

    private static byte[] exif(Frame frame, JpegTags tags) {
        List<TiffField> main = new ArrayList<>(OriginFields.main(tags.origin()));
        main.add(TiffField.shorts(274, 1)); // upright
        main.addAll(TiffHead.resolution(tags.pixelsPerInch()));
        main.add(TiffField.shorts(531, 1)); // chroma samples lie centred
        main.add(TiffField.longs(EXIF_IFD, 0));
        List<TiffField> exif = new ArrayList<>(OriginFields.exif(tags.origin()));
        exif.add(TiffField.undefined(0x9101, new byte[] {1, 2, 3, 0})); // Y, Cb, Cr
        exif.add(TiffField.longs(0xA002, frame.width()));
        exif.add(TiffField.longs(0xA003, frame.height()));
        main.sort(Comparator.comparingInt(TiffField::tag));
        exif.sort(Comparator.comparingInt(TiffField::tag));
        int exifAt = 8 + TiffField.directorySize(main);
        main.replaceAll(field -> field.tag() == EXIF_IFD ? TiffField.longs(EXIF_IFD, exifAt) : field);
        ByteBuffer file =
                ByteBuffer.allocate(exifAt + TiffField.directorySize(exif)).order(ByteOrder.LITTLE_ENDIAN);
        file.put(new byte[] {'I', 'I', 42, 0}).putInt(8);
        TiffField.put(main, file);
        TiffField.put(exif, file);
        return file.array();
    }

    private static void segment(byte[] name, byte[] content, OutputStream out) throws IOException {
        if (name.length + content.length > LARGEST) {
            throw new IllegalArgumentException(
                    "metadata of %d bytes does not fit a JPEG segment".formatted(content.length));
        }
        int length = 2 + name.length + content.length;
        ByteArrayOutputStream segment = new ByteArrayOutputStream(length + 2);
        segment.writeBytes(new byte[] {(byte) 0xFF, (byte) 0xE1, (byte) (length >> 8), (byte) length});
        segment.writeBytes(name);
        segment.writeBytes(content);
        segment.writeTo(out);
    }
}
