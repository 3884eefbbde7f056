package org.stook.imaging.codec;

import java.io.ByteArrayOutputStream;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** Builds TIFFs field by field, the odd ones too: pixel data first, the directory last, big endian. */
final class TiffBytes {
    private final TreeMap<Integer, long[]> fields = new TreeMap<>();
    private final ByteArrayOutputStream data = new ByteArrayOutputStream();

    TiffBytes(int width, int height) {
        data.writeBytes(new byte[] {'M', 'M', 0, 42, 0, 0, 0, 0});
        with(256, width)
                .with(257, height)
                .with(258, 8)
                .with(259, 1)
                .with(262, 1)
                .with(277, 1);
    }

    TiffBytes with(int tag, long... values) {
        fields.put(tag, values);
        return this;
    }

    TiffBytes without(int tag) {
        fields.remove(tag);
        return this;
    }

    /** Adds strips, one after the other. */
    TiffBytes strips(byte[]... strips) {
        List<Long> offsets = new ArrayList<>();
        List<Long> sizes = new ArrayList<>();
        for (byte[] strip : strips) {
            offsets.add((long) data.size());
            sizes.add((long) strip.length);
            data.writeBytes(strip);
        }
        with(273, offsets.stream().mapToLong(v -> v).toArray());
        return with(279, sizes.stream().mapToLong(v -> v).toArray());
    }

    byte[] bytes() {
        int directory = data.size() + (data.size() & 1);
        int values = directory + 2 + 12 * fields.size() + 4;
        int size = values + fields.values().stream().mapToInt(v -> 4 * v.length).sum();
        ByteBuffer out = ByteBuffer.allocate(size).order(ByteOrder.BIG_ENDIAN);
        out.put(data.toByteArray()).putInt(4, directory).position(directory);
        out.putShort((short) fields.size());
        for (var field : fields.entrySet()) {
            out.putShort(field.getKey().shortValue()).putShort((short) 4).putInt(field.getValue().length);
            if (field.getValue().length == 1) {
                out.putInt((int) field.getValue()[0]);
                continue;
            }
            out.putInt(values);
            for (long value : field.getValue()) {
                out.putInt(values, (int) value);
                values += 4;
            }
        }
        return out.array();
    }
}
