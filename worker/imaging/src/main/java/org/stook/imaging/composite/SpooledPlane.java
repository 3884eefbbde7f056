package org.stook.imaging.composite;

import java.io.IOException;
import java.io.UncheckedIOException;
import org.stook.imaging.frame.Parallel;
import org.stook.imaging.frame.Plane;

/**
 * A plane in the spool, rounded to 16 bit.
 *
 * @param place where it lies
 */
record SpooledPlane(Spool spool, Spool.Place place, Coding coding) {
    /** Rows written or read at a time. */
    private static final int BAND = 32;

    /** How values become codes. */
    enum Coding {
        /** 0 to 1, in equal steps. */
        EVEN {
            @Override
            void code(float[] values, short[] codes, int at) {
                for (int x = 0; x < values.length; x++) codes[at + x] = (short) (int) (values[x] * WHITE + 0.5f);
            }

            @Override
            void value(short[] codes, float factor, float[] values, int at, int count) {
                for (int i = 0; i < count; i++) values[at + i] = (codes[i] & 0xFFFF) * (factor / WHITE);
            }
        },
        /** Any positive value, cut off after seven bits of mantissa: in steps of half a per cent. */
        RELATIVE {
            @Override
            void code(float[] values, short[] codes, int at) {
                for (int x = 0; x < values.length; x++) {
                    codes[at + x] = (short) (Float.floatToRawIntBits(values[x]) >>> DROPPED_BITS);
                }
            }

            @Override
            void value(short[] codes, float factor, float[] values, int at, int count) {
                for (int i = 0; i < count; i++) {
                    values[at + i] = Float.intBitsToFloat(codes[i] << DROPPED_BITS) * factor;
                }
            }
        };

        private static final float WHITE = 65535;
        private static final int DROPPED_BITS = 16;

        abstract void code(float[] values, short[] codes, int at);

        abstract void value(short[] codes, float factor, float[] values, int at, int count);
    }

    /** A plane that is to be written row by row, from above to below. One thread. */
    static final class Writer {
        private final SpooledPlane plane;
        private final short[] codes;
        private int first;
        private int rows;

        Writer(Spool spool, int width, int height, Coding coding) {
            this.plane = new SpooledPlane(spool, spool.reserve(width, height), coding);
            this.codes = new short[BAND * width];
        }

        void row(float[] values) {
            plane.coding.code(values, codes, rows++ * values.length);
            if (rows == BAND) write();
        }

        SpooledPlane finish() {
            write();
            return plane;
        }

        private void write() {
            try {
                plane.spool.write(plane.place, first, rows, codes);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
            first += rows;
            rows = 0;
        }
    }

    /** Reads all of it, times {@code factor}, into a plane of its size. */
    Plane read(float factor, int threads, Plane into) throws IOException {
        try {
            Parallel.forEach((place.height() + BAND - 1) / BAND, threads, band -> readBand(band * BAND, factor, into));
        } catch (UncheckedIOException e) {
            throw e.getCause();
        }
        return into;
    }

    /** Reads all of it as it is, in this thread alone. */
    Plane read() throws IOException {
        return read(1, 1, blank());
    }

    private void readBand(int first, float factor, Plane into) {
        int rows = Math.min(BAND, place.height() - first);
        int at = first * place.width();
        try {
            spool.read(place, first, rows, (codes, count) -> coding.value(codes, factor, into.samples(), at, count));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    Plane blank() {
        return new Plane(place.width(), place.height());
    }
}
