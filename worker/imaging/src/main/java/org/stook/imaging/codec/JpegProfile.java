package org.stook.imaging.codec;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Optional;
import java.util.SortedMap;
import java.util.TreeMap;
import org.stook.imaging.codec.UnreadableFrame.Reason;
import org.stook.imaging.frame.IccProfile;

/** An ICC profile in the APP2 segments of a JPEG, in numbered parts of at most 64 KiB (ICC.1:2022 annex B.4). */
final class JpegProfile {
    private static final byte[] NAME = "ICC_PROFILE\0".getBytes(StandardCharsets.ISO_8859_1);
    private static final int NUMBERS = 2;
    /** A segment's length field counts 65535 at most, itself included. */
    private static final int LARGEST_PART = 65535 - 2 - 12 - NUMBERS;

    private static final int MOST_PARTS = 255;

    private final SortedMap<Integer, byte[]> parts = new TreeMap<>();
    private int declared;

    /** Looks at an APP2 segment's payload; others than profiles live in APP2 too and are passed over. */
    void take(byte[] data, int from, int to) {
        int start = from + NAME.length;
        boolean isProfile = to >= start + NUMBERS && Arrays.equals(data, from, start, NAME, 0, NAME.length);
        if (!isProfile) return;
        declared = data[start + 1] & 0xFF;
        parts.put(data[start] & 0xFF, Arrays.copyOfRange(data, start + NUMBERS, to));
    }

    Optional<IccProfile> whole(Path file) throws UnreadableFrame {
        if (parts.isEmpty()) return Optional.empty();
        if (parts.size() != declared || parts.firstKey() != 1 || parts.lastKey() != declared) {
            throw UnreadableFrame.of(
                    Reason.DAMAGED, file, "an ICC profile with parts " + parts.keySet(), "parts 1 to " + declared);
        }
        ByteArrayOutputStream joined = new ByteArrayOutputStream();
        parts.values().forEach(joined::writeBytes);
        return Optional.of(IccProfile.of(joined.toByteArray()));
    }

    static void write(byte[] profile, OutputStream out) throws IOException {
        int count = (profile.length + LARGEST_PART - 1) / LARGEST_PART;
        if (count > MOST_PARTS) {
            throw new IllegalArgumentException("a profile of %d bytes does not fit a JPEG".formatted(profile.length));
        }
        for (int part = 0; part < count; part++) {
            int from = part * LARGEST_PART;
            int size = Math.min(LARGEST_PART, profile.length - from);
            int length = 2 + NAME.length + NUMBERS + size;
            out.write(new byte[] {(byte) 0xFF, (byte) 0xE2, (byte) (length >> 8), (byte) length});
            out.write(NAME);
            out.write(part + 1);
            out.write(count);
            out.write(profile, from, size);
        }
    }
}
