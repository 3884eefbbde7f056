package org.stook.imaging.codec;

import java.util.Optional;
import java.util.zip.DataFormatException;
import java.util.zip.Inflater;

/**
 * The packings of TIFF 6.0 (and Deflate of its 2002 supplement) that cameras and raw developers write.
 *
 * <p>Written here because the runtime's own TIFF reader fills what is missing in a strip with black and says nothing,
 * and a frame must be whole or refused; and because rows go straight into the sample array this way.
 */
enum TiffCompression {
    NONE(1) {
        @Override
        void unpack(byte[] packed, byte[] out) {
            System.arraycopy(packed, 0, out, 0, out.length);
        }
    },
    /** Section 13: codes of 9 to 12 bits, most significant bit first; at most 3839 bytes from one 12-bit code. */
    LZW(2560) {
        @Override
        void unpack(byte[] packed, byte[] out) throws Damage {
            new Lzw(packed, out).unpack();
        }
    },
    /** RFC 1950 stream; its best ratio is 1032 to 1. */
    DEFLATE(1032) {
        @Override
        void unpack(byte[] packed, byte[] out) throws Damage {
            Inflater inflater = new Inflater();
            try {
                inflater.setInput(packed);
                int at = 0;
                while (at < out.length) {
                    int n = inflater.inflate(out, at, out.length - at);
                    if (n == 0) throw new Damage("Deflate data that end after %d bytes".formatted(at));
                    at += n;
                }
            } catch (DataFormatException broken) {
                throw new Damage("broken Deflate data (%s)".formatted(broken.getMessage()));
            } finally {
                inflater.end();
            }
        }
    },
    /** Section 9: two bytes give at most 128. */
    PACK_BITS(64) {
        @Override
        void unpack(byte[] packed, byte[] out) throws Damage {
            int from = 0;
            int to = 0;
            while (to < out.length) {
                if (from >= packed.length) throw new Damage("PackBits data that end after %d bytes".formatted(to));
                int n = packed[from++];
                if (n == -128) continue;
                int run = Math.min(n >= 0 ? n + 1 : 1 - n, out.length - to);
                if (from + (n >= 0 ? run : 1) > packed.length) throw new Damage("PackBits data that end within a run");
                if (n >= 0) {
                    System.arraycopy(packed, from, out, to, run);
                    from += n + 1;
                } else {
                    java.util.Arrays.fill(out, to, to + run, packed[from++]);
                }
                to += run;
            }
        }
    };

    /** Packed data that do not give what they should. */
    static final class Damage extends Exception {
        private static final long serialVersionUID = 1;

        Damage(String found) {
            super(found);
        }
    }

    private final int mostExpansion;

    TiffCompression(int mostExpansion) {
        this.mostExpansion = mostExpansion;
    }

    /** Bytes that one packed byte can give at most. */
    int mostExpansion() {
        return mostExpansion;
    }

    /** By the value of field 259. */
    static Optional<TiffCompression> of(long code) {
        if (code == 1) return Optional.of(NONE);
        if (code == 5) return Optional.of(LZW);
        if (code == 8 || code == 32946) return Optional.of(DEFLATE);
        return code == 32773 ? Optional.of(PACK_BITS) : Optional.empty();
    }

    /** Fills {@code out}; data beyond it are ignored, less than it is damage. */
    abstract void unpack(byte[] packed, byte[] out) throws Damage;
}
