package org.stook.imaging.codec;

import org.stook.imaging.codec.TiffCompression.Damage;

/** LZW of TIFF 6.0, section 13, with its early change of the code length. One use. */
final class Lzw {
    private static final int CLEAR = 256;
    private static final int END = 257;
    private static final int FIRST_FREE = 258;
    private static final int CODES = 4096;

    private final byte[] packed;
    private final byte[] out;
    /** A string is a piece of what was written already: where it starts, and how long it is. */
    private final int[] starts = new int[CODES];

    private final int[] lengths = new int[CODES];
    private int bitPosition;
    private int bits = 9;
    private int free = FIRST_FREE;
    private int written;

    Lzw(byte[] packed, byte[] out) {
        this.packed = packed;
        this.out = out;
    }

    void unpack() throws Damage {
        int previousStart = -1;
        int previousLength = 0;
        while (written < out.length) {
            int code = next();
            if (code == END) throw new Damage("LZW data that end after %d of %d bytes".formatted(written, out.length));
            if (code == CLEAR) {
                bits = 9;
                free = FIRST_FREE;
                previousStart = -1;
                continue;
            }
            if (previousStart >= 0 && free < CODES) {
                // The new string is the previous one plus the byte that is about to be written behind it.
                starts[free] = previousStart;
                lengths[free] = previousLength + 1;
                free++;
                if (free + 1 >= 1 << bits && bits < 12) bits++;
            }
            int start = written;
            int length = write(code);
            previousStart = start;
            previousLength = length;
        }
    }

    private int write(int code) throws Damage {
        if (code < CLEAR) {
            out[written++] = (byte) code;
            return 1;
        }
        if (code >= free || code < FIRST_FREE) throw new Damage("LZW code %d before it was defined".formatted(code));
        int length = lengths[code];
        int fits = Math.min(length, out.length - written);
        // Byte by byte on purpose: a string may reach into what it is just writing.
        for (int i = 0; i < fits; i++) out[written + i] = out[starts[code] + i];
        written += fits;
        return length;
    }

    private int next() throws Damage {
        if (bitPosition + bits > packed.length * 8L) {
            throw new Damage("LZW data that end after %d of %d bytes".formatted(written, out.length));
        }
        int at = bitPosition >>> 3;
        int window = (packed[at] & 0xFF) << 16
                | (at + 1 < packed.length ? packed[at + 1] & 0xFF : 0) << 8
                | (at + 2 < packed.length ? packed[at + 2] & 0xFF : 0);
        int code = window >>> (24 - bits - (bitPosition & 7)) & ((1 << bits) - 1);
        bitPosition += bits;
        return code;
    }
}
