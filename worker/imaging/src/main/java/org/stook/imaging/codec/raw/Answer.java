package org.stook.imaging.codec.raw;

import java.io.DataInputStream;
import java.io.DataOutputStream;
import java.io.IOException;
import java.nio.ByteBuffer;

/** What an unpacking process writes to its output, and how it is read. */
final class Answer {
    private static final int SIGN = 0x52415731;
    private static final int PICTURE = 3;
    private static final int CHUNK = 1 << 16;

    private Answer() {}

    static void refusal(RawRefusal refusal, DataOutputStream out) throws IOException {
        out.writeInt(SIGN);
        out.writeByte(refusal.why().ordinal());
        out.writeUTF(refusal.found());
        out.writeUTF(refusal.expected());
    }

    static void size(RawSize size, DataOutputStream out) throws IOException {
        out.writeInt(SIGN);
        out.writeByte(PICTURE);
        out.writeInt(size.width());
        out.writeInt(size.height());
    }

    static void light(int[] filters, Mosaic.Light light, DataOutputStream out) throws IOException {
        for (int filter : filters) out.writeByte(filter);
        out.writeFloat(light.saturated());
        for (float factor : light.balance()) out.writeFloat(factor);
        for (float factor : light.matrix()) out.writeFloat(factor);
    }

    /** @throws java.io.EOFException if the process ended before it had answered */
    static RawSize size(DataInputStream in) throws RawRefusal, IOException {
        if (in.readInt() != SIGN) {
            throw new IOException("an answer that does not begin with its sign");
        }
        int kind = in.readByte();
        if (kind != PICTURE) {
            throw new RawRefusal(RawRefusal.Cause.values()[kind], in.readUTF(), in.readUTF());
        }
        return new RawSize(in.readInt(), in.readInt());
    }

    static Mosaic mosaic(RawSize size, DataInputStream in) throws IOException {
        int[] filters = new int[4];
        for (int i = 0; i < filters.length; i++) filters[i] = in.readByte();
        float saturated = in.readFloat();
        Mosaic.Light light = new Mosaic.Light(saturated, floats(3, in), floats(9, in));
        short[] counts = new short[Math.multiplyExact(size.width(), size.height())];
        byte[] chunk = new byte[CHUNK];
        for (int at = 0; at < counts.length; at += CHUNK / 2) {
            int n = Math.min(CHUNK / 2, counts.length - at);
            in.readFully(chunk, 0, 2 * n);
            ByteBuffer.wrap(chunk).asShortBuffer().get(counts, at, n);
        }
        return new Mosaic(size.width(), size.height(), counts, filters, light);
    }

    private static float[] floats(int count, DataInputStream in) throws IOException {
        float[] floats = new float[count];
        for (int i = 0; i < count; i++) floats[i] = in.readFloat();
        return floats;
    }
}
