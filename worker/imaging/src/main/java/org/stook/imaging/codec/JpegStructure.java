package org.stook.imaging.codec;

import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.stook.imaging.codec.UnreadableFrame.Reason;
import org.stook.imaging.frame.IccProfile;
import org.stook.imaging.frame.LargeArrays;

/**
 * The markers of a JPEG (ITU-T T.81 annex B), walked from SOI to the EOI of the primary picture. Bytes after that EOI are
 * legal (cameras append previews); a file without it is incomplete, however much of it a decoder would paint.
 */
final class JpegStructure {
    private static final int SOI = 0xD8;
    private static final int EOI = 0xD9;
    private static final int SOS = 0xDA;
    private static final int APP0 = 0xE0;
    private static final int APP2 = 0xE2;
    private static final int APP14 = 0xEE;
    private static final int COM = 0xFE;
    private static final byte[] JFIF = "JFIF\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final byte[] ADOBE = "Adobe".getBytes(StandardCharsets.ISO_8859_1);
    /** Adobe's marker (technical note 5116): version 100, no flags, transform 0. Decoders then leave channels as they are. */
    private static final byte[] AS_STORED = {
        (byte) 0xFF, (byte) APP14, 0, 14, 'A', 'd', 'o', 'b', 'e', 0, 100, 0, 0, 0, 0, 0
    };

    private static final VarHandle EIGHT_BYTES =
            MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.nativeOrder());
    private static final long LOWEST_BITS = 0x0101010101010101L;
    private static final long HIGHEST_BITS = 0x8080808080808080L;

    private final Path file;
    private final byte[] data;
    /** Where the parts of the picture alone lie in the data. */
    private final List<Span> bare = new ArrayList<>();

    private final JpegProfile profile = new JpegProfile();
    private boolean jfif;
    private int adobeTransform = -1;
    private int frameHeader = -1;
    private int scans;

    private JpegStructure(Path file, byte[] data) {
        this.file = file;
        this.data = data;
    }

    static JpegStructure walk(Path file, byte[] data) throws UnreadableFrame {
        JpegStructure structure = new JpegStructure(file, data);
        structure.walk();
        structure.checkFrameHeader();
        return structure;
    }

    int width() {
        return word(frameHeader + 5);
    }

    int height() {
        return word(frameHeader + 3);
    }

    /** 1 or 3. */
    int channels() {
        return data[frameHeader + 7];
    }

    private record Span(int from, int length) {}

    /**
     * The picture without application segments and comments: all that a decoder needs, nothing that it may trip over; but for
     * one that says its channels are not to be converted.
     */
    byte[] bare() {
        byte[] out = LargeArrays.bytes(bareLength() + AS_STORED.length);
        int at = 0;
        for (Span span : bare) {
            System.arraycopy(data, span.from, out, at, span.length);
            at += span.length;
            if (span == bare.get(0)) {
                System.arraycopy(AS_STORED, 0, out, at, AS_STORED.length);
                at += AS_STORED.length;
            }
        }
        return out;
    }

    private int bareLength() {
        return bare.stream().mapToInt(Span::length).sum();
    }

    /** Whether three channels are luma and chroma (JFIF; else Adobe's marker; else the component names decide). */
    boolean isLumaChroma() {
        if (channels() != 3) return false;
        if (jfif) return true;
        if (adobeTransform >= 0) return adobeTransform != 0;
        int first = frameHeader + 8;
        return !(data[first] == 'R' && data[first + 3] == 'G' && data[first + 6] == 'B');
    }

    Optional<IccProfile> profile() throws UnreadableFrame {
        return profile.whole(file);
    }

    private void walk() throws UnreadableFrame {
        if (data.length < 2 || word(0) != (0xFF00 | SOI)) {
            throw UnreadableFrame.of(Reason.NOT_A_FRAME, file, FirstBytes.describe(head()), "a JPEG (FF D8 FF)");
        }
        bare.add(new Span(0, 2));
        int at = 2;
        while (true) {
            at = marker(at);
            int code = data[at + 1] & 0xFF;
            if (code == EOI) {
                bare.add(new Span(at, 2));
                return;
            }
            if (standsAlone(code)) {
                at += 2;
                continue;
            }
            int end = at + 2 + segmentLength(at);
            segment(code, at, end);
            at = code == SOS ? entropyCoded(end) : end;
        }
    }

    /** Position of the 0xFF next to a marker code; fill bytes 0xFF before it are legal. */
    private int marker(int at) throws UnreadableFrame {
        int position = at;
        while (position + 1 < data.length && data[position] == (byte) 0xFF && data[position + 1] == (byte) 0xFF)
            position++;
        if (position + 1 >= data.length) throw incomplete();
        if (data[position] != (byte) 0xFF || data[position + 1] == 0) {
            throw UnreadableFrame.of(
                    Reason.DAMAGED,
                    file,
                    "byte %02x at offset %d".formatted(data[position], position),
                    "a JPEG marker");
        }
        return position;
    }

    private int segmentLength(int marker) throws UnreadableFrame {
        if (marker + 3 >= data.length) throw incomplete();
        int length = word(marker + 2);
        if (length < 2) {
            throw UnreadableFrame.of(
                    Reason.DAMAGED, file, "a JPEG segment of length " + length, "a length of 2 or more");
        }
        if (marker + 2 + length > data.length) throw incomplete();
        return length;
    }

    private void segment(int code, int at, int end) throws UnreadableFrame {
        int payload = at + 4;
        if (code == APP0 && startsWith(payload, end, JFIF)) jfif = true;
        if (code == APP2) profile.take(data, payload, end);
        if (code == APP14 && startsWith(payload, end, ADOBE) && end >= payload + 12) {
            adobeTransform = data[payload + 11] & 0xFF;
        }
        if (isFrameHeader(code)) {
            if (frameHeader >= 0) throw damaged("two frame headers", "one");
            frameHeader = at + 2;
            if (code > 0xC2) {
                throw UnreadableFrame.of(
                        Reason.UNSUPPORTED,
                        file,
                        "a lossless, hierarchical or arithmetic-coded JPEG (SOF%d)".formatted(code - 0xC0),
                        "a baseline or progressive one");
            }
        }
        if (code == SOS) scans++;
        boolean application = code >= APP0 && code <= 0xEF;
        if (!application && code != COM) bare.add(new Span(at, end - at));
    }

    /** Stray restart markers and TEM have no length. */
    private static boolean standsAlone(int code) {
        return code == 1 || (code >= 0xD0 && code <= SOI);
    }

    private static boolean isFrameHeader(int code) {
        return code >= 0xC0 && code <= 0xCF && code != 0xC4 && code != 0xC8 && code != 0xCC;
    }

    /** Skips entropy-coded data; inside it 0xFF is followed by 0 or by a restart marker. */
    private int entropyCoded(int from) throws UnreadableFrame {
        for (int at = from; at + 1 < data.length; at++) {
            while (at + Long.BYTES + 1 < data.length && !holdsFf((long) EIGHT_BYTES.get(data, at))) at += Long.BYTES;
            if (data[at] != (byte) 0xFF) continue;
            int next = data[at + 1] & 0xFF;
            boolean fill = next == 0xFF;
            if (next == 0 || (next >= 0xD0 && next < SOI) || fill) continue;
            bare.add(new Span(from, at - from));
            return at;
        }
        throw incomplete();
    }

    /** Whether one of eight bytes is 0xFF: only those carry out of their place when 1 is added and have their highest bit set. */
    private static boolean holdsFf(long bytes) {
        return (bytes & ~(bytes + LOWEST_BITS) & HIGHEST_BITS) != 0;
    }

    private void checkFrameHeader() throws UnreadableFrame {
        if (frameHeader < 0 || scans == 0) throw damaged("no picture between its start and end markers", "one");
        int length = word(frameHeader);
        int components = length >= 8 ? data[frameHeader + 7] & 0xFF : 0;
        if (length < 8 || length != 8 + 3 * components)
            throw damaged("a frame header of length " + length, "a valid one");
        if (data[frameHeader + 2] != 8) {
            throw UnreadableFrame.of(Reason.UNSUPPORTED, file, data[frameHeader + 2] + " bit JPEG samples", "8 bit");
        }
        if (components != 1 && components != 3) {
            throw UnreadableFrame.of(
                    Reason.UNSUPPORTED,
                    file,
                    "a JPEG of %d components (4 are CMYK)".formatted(components),
                    "1 (grey) or 3 (colour)");
        }
        // An 8 x 8 block needs at least one bit (its first DC coefficient): 512 pixels a byte.
        FileLimits.check(file, width(), height(), 512L * bareLength());
    }

    private UnreadableFrame incomplete() {
        return UnreadableFrame.of(
                Reason.INCOMPLETE,
                file,
                "a JPEG of %d bytes that stops before its end".formatted(data.length),
                "the end marker FF D9 of the picture");
    }

    private UnreadableFrame damaged(String found, String expected) {
        return UnreadableFrame.of(Reason.DAMAGED, file, found, expected);
    }

    private boolean startsWith(int at, int end, byte[] prefix) {
        return end - at >= prefix.length && Arrays.equals(data, at, at + prefix.length, prefix, 0, prefix.length);
    }

    private byte[] head() {
        return Arrays.copyOf(data, Math.min(data.length, FrameReader.START));
    }

    private int word(int at) {
        return ((data[at] & 0xFF) << 8) | (data[at + 1] & 0xFF);
    }
}
