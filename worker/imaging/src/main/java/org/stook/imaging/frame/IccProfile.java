package org.stook.imaging.frame;

import java.util.Arrays;

/**
 * An ICC colour profile as it stands in a file, byte for byte (ICC.1:2022). Only carried here; what the colours mean is
 * worked out where tones are made.
 */
public final class IccProfile {
    private final byte[] bytes;

    private IccProfile(byte[] bytes) {
        this.bytes = bytes;
    }

    /** Copies {@code bytes}. */
    public static IccProfile of(byte[] bytes) {
        return new IccProfile(bytes.clone());
    }

    /** A copy. */
    public byte[] bytes() {
        return bytes.clone();
    }

    public int size() {
        return bytes.length;
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof IccProfile p && Arrays.equals(bytes, p.bytes);
    }

    @Override
    public int hashCode() {
        return Arrays.hashCode(bytes);
    }

    @Override
    public String toString() {
        return "IccProfile[" + bytes.length + " bytes]";
    }
}
