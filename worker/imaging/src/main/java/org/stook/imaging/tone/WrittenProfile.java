package org.stook.imaging.tone;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.LinkedHashMap;
import java.util.Map;
import org.stook.imaging.frame.IccProfile;

/**
 * Makes small matrix/curve profiles (ICC.1:2010, version 4.3; sections 7, 8.4.3 and 8.3.3 for grey). Our own, because the
 * profiles that come with a runtime change with its version, and a composite's bytes must not.
 */
@SuppressWarnings("ByteBufferBackingArray") // all buffers here come from ByteBuffer.allocate
final class WrittenProfile {
    private static final int HEADER = 128;
    private static final int VERSION = 0x04300000;
    private static final int[] ICC_WHITE = {0xF6D6, 0x10000, 0xD32D};
    private static final String COPYRIGHT = "No copyright; use freely";

    private WrittenProfile() {}

    static IccProfile rgb(String name, Matrix toConnection, Matrix adaptation, TransferCurve curve) {
        Map<String, byte[]> elements = common(name);
        elements.put("chad", fixed("sf32", adaptation.m()));
        for (int i = 0; i < 3; i++) {
            double[] column = {toConnection.at(0, i), toConnection.at(1, i), toConnection.at(2, i)};
            elements.put("rgb".charAt(i) + "XYZ", fixed("XYZ ", column));
        }
        byte[] element = curve.iccElement();
        for (int i = 0; i < 3; i++) elements.put("rgb".charAt(i) + "TRC", element);
        return assemble("RGB ", elements);
    }

    static IccProfile grey(String name, TransferCurve curve) {
        Map<String, byte[]> elements = common(name);
        elements.put("kTRC", curve.iccElement());
        return assemble("GRAY", elements);
    }

    private static Map<String, byte[]> common(String name) {
        Map<String, byte[]> elements = new LinkedHashMap<>();
        elements.put("desc", localised(name));
        elements.put("cprt", localised(COPYRIGHT));
        ByteBuffer white = element("XYZ ", 12);
        for (int value : ICC_WHITE) white.putInt(value);
        elements.put("wtpt", white.array());
        return elements;
    }

    private static IccProfile assemble(String space, Map<String, byte[]> elements) {
        // Equal elements (the three curves) are stored once and pointed at thrice.
        Map<ByteBuffer, Integer> places = new LinkedHashMap<>();
        int end = HEADER + 4 + 12 * elements.size();
        for (byte[] element : elements.values()) {
            if (places.putIfAbsent(ByteBuffer.wrap(element), end) == null) end += element.length + 3 & ~3;
        }
        ByteBuffer out = ByteBuffer.allocate(end);
        header(out, end, space);
        out.position(HEADER);
        out.putInt(elements.size());
        elements.forEach((tag, element) -> {
            int place = places.getOrDefault(ByteBuffer.wrap(element), 0);
            out.put(ascii(tag)).putInt(place).putInt(element.length);
            out.put(place, element);
        });
        out.put(84, identity(out.array()));
        return IccProfile.of(out.array());
    }

    private static void header(ByteBuffer out, int size, String space) {
        out.putInt(0, size).putInt(8, VERSION);
        out.put(12, ascii("mntr")).put(16, ascii(space)).put(20, ascii("XYZ "));
        // A fixed day: the profile is part of files that must come out the same again.
        short[] day = {2026, 1, 1, 0, 0, 0};
        for (int i = 0; i < day.length; i++) out.putShort(24 + 2 * i, day[i]);
        out.put(36, ascii("acsp"));
        for (int i = 0; i < 3; i++) out.putInt(68 + 4 * i, ICC_WHITE[i]);
    }

    /** ICC.1:2010 section 7.2.18; flags, intent and the identity itself, zero here, do not count. */
    private static byte[] identity(byte[] profile) {
        try {
            return MessageDigest.getInstance("MD5").digest(profile);
        } catch (NoSuchAlgorithmException missing) {
            throw new IllegalStateException("every Java runtime has MD5", missing);
        }
    }

    /** multiLocalizedUnicodeType with one record, US English. */
    private static byte[] localised(String text) {
        byte[] characters = text.getBytes(StandardCharsets.UTF_16BE);
        ByteBuffer out = element("mluc", 20 + characters.length);
        out.putInt(1)
                .putInt(12)
                .put(ascii("enUS"))
                .putInt(characters.length)
                .putInt(28)
                .put(characters);
        return out.array();
    }

    private static byte[] fixed(String type, double[] values) {
        ByteBuffer out = element(type, 4 * values.length);
        for (double value : values) out.putInt((int) Math.round(value * 65536));
        return out.array();
    }

    private static ByteBuffer element(String type, int size) {
        return ByteBuffer.allocate(8 + size).put(ascii(type)).putInt(0);
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }
}
