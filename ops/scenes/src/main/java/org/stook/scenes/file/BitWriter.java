package org.stook.scenes.file;

import java.io.ByteArrayOutputStream;

/** Bits to bytes, the highest first. */
final class BitWriter {
    private final ByteArrayOutputStream out = new ByteArrayOutputStream();
    private final boolean stuffed;
    private long held;
    private int count;

    BitWriter() {
        this(false);
    }

    /** @param stuffed whether a zero byte follows every byte of ones, as in JPEG (ITU-T T.81, F.1.2.3) */
    BitWriter(boolean stuffed) {
        this.stuffed = stuffed;
    }

    /** The lowest {@code bits} bits of a value, at most 32. */
    void put(long value, int bits) {
        held = held << bits | value & ((1L << bits) - 1);
        count += bits;
        while (count >= 8) {
            count -= 8;
            int octet = (int) (held >> count) & 0xFF;
            out.write(octet);
            if (stuffed && octet == 0xFF) out.write(0);
        }
    }

    /** Completes the byte that was begun. @param bit what with */
    void fill(int bit) {
        if (count > 0) put(bit == 0 ? 0 : 0xFF, 8 - count);
    }

    byte[] bytes() {
        return out.toByteArray();
    }
}
