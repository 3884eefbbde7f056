package org.stook.scenes.file;

import java.io.ByteArrayOutputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;

/**
 * Lossless JPEG (ITU-T T.81, annex H: process 14, each sample predicted by its left neighbour), as DNG packs sensor counts:
 * columns of even and of odd number are two components.
 */
final class LosslessJpeg {
    /** How many codes there are of 1, 2, .. 16 bits. */
    private static final int[] LENGTHS = {0, 0, 5, 3, 2, 7, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0};
    /** Sizes of differences in bits, those with the shortest codes first. */
    private static final int[] SIZES = {4, 5, 6, 3, 7, 2, 8, 1, 9, 0, 10, 11, 12, 13, 14, 15, 16};

    private static final int COMPONENTS = 2;

    private LosslessJpeg() {}

    /** @param width even */
    static byte[] bytes(int[] samples, int width, int bits) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (DataOutputStream out = new DataOutputStream(bytes)) {
            out.writeShort(0xFFD8);
            tables(out);
            out.writeShort(0xFFC3);
            out.writeShort(8 + 3 * COMPONENTS);
            out.writeByte(bits);
            out.writeShort(samples.length / width);
            out.writeShort(width / COMPONENTS);
            out.writeByte(COMPONENTS);
            for (int c = 0; c < COMPONENTS; c++) out.write(new byte[] {(byte) c, 0x11, 0});
            out.writeShort(0xFFDA);
            out.writeShort(6 + 2 * COMPONENTS);
            out.writeByte(COMPONENTS);
            for (int c = 0; c < COMPONENTS; c++) out.write(new byte[] {(byte) c, 0});
            out.write(new byte[] {1, 0, 0}); // predicted by the left neighbour, no point transform
            out.write(scan(samples, width, bits));
            out.writeShort(0xFFD9);
        } catch (IOException e) {
            throw new UncheckedIOException("memory refused to be written", e);
        }
        return bytes.toByteArray();
    }

    private static void tables(DataOutputStream out) throws IOException {
        out.writeShort(0xFFC4);
        out.writeShort(3 + LENGTHS.length + SIZES.length);
        out.writeByte(0);
        for (int count : LENGTHS) out.writeByte(count);
        for (int size : SIZES) out.writeByte(size);
    }

    private static byte[] scan(int[] samples, int width, int bits) {
        int[] codes = new int[SIZES.length];
        int[] lengths = new int[SIZES.length];
        int code = 0;
        int next = 0;
        for (int length = 1; length <= LENGTHS.length; length++, code <<= 1) {
            for (int k = 0; k < LENGTHS[length - 1]; k++, code++, next++) {
                codes[SIZES[next]] = code;
                lengths[SIZES[next]] = length;
            }
        }
        BitWriter out = new BitWriter(true);
        for (int i = 0; i < samples.length; i++) {
            int difference = samples[i] - predicted(samples, i, width, bits);
            int size = Integer.SIZE - Integer.numberOfLeadingZeros(Math.abs(difference));
            out.put(codes[size], lengths[size]);
            out.put(difference < 0 ? difference - 1 : difference, size);
        }
        out.fill(1);
        return out.bytes();
    }

    private static int predicted(int[] samples, int i, int width, int bits) {
        if (i % width >= COMPONENTS) return samples[i - COMPONENTS];
        return i < width ? 1 << (bits - 1) : samples[i - width];
    }
}
