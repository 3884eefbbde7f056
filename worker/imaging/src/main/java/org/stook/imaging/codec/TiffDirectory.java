package org.stook.imaging.codec;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.stook.imaging.codec.UnreadableFrame.Reason;

/**
 * An image file directory of a TIFF (TIFF 6.0, section 2): its entries, each checked to lie inside the file before
 * it is read.
 */
final class TiffDirectory {
    private static final int BIG_TIFF = 43;
    private static final int[] TYPE_SIZES = {0, 1, 1, 2, 4, 8, 1, 1, 2, 4, 8, 4, 8, 4};
    private static final int SHORT = 3;
    private static final int LONG = 4;
    /** The offset of a directory (TIFF Technical Note 1, 1995); otherwise as LONG. */
    private static final int IFD = 13;

    private record Entry(int type, long count, long offset) {}

    private final Path file;
    private final FileChannel channel;
    private final long length;
    private final ByteOrder order;
    private final Map<Integer, Entry> entries = new HashMap<>();
    private long next;

    private TiffDirectory(Path file, FileChannel channel, long length, ByteOrder order) {
        this.file = file;
        this.channel = channel;
        this.length = length;
        this.order = order;
    }

    static TiffDirectory first(Path file, FileChannel channel) throws UnreadableFrame, IOException {
        long length = channel.size();
        if (length < 8) throw incomplete(file, length, 8);
        ByteBuffer head = ByteBuffer.allocate(8);
        fill(channel, 0, head);
        ByteOrder order = head.get(0) == 'I' ? ByteOrder.LITTLE_ENDIAN : ByteOrder.BIG_ENDIAN;
        head.order(order);
        if (head.getShort(2) == BIG_TIFF) {
            throw UnreadableFrame.of(Reason.UNSUPPORTED, file, "a BigTIFF (64-bit offsets)", "a classic TIFF 6.0");
        }
        TiffDirectory directory = new TiffDirectory(file, channel, length, order);
        directory.readEntries(Integer.toUnsignedLong(head.getInt(4)));
        return directory;
    }

    private void readEntries(long at) throws UnreadableFrame, IOException {
        if (at < 8) throw damaged("a directory at offset " + at, "an offset of 8 or more");
        int count = bytes(at, 2).getShort() & 0xFFFF;
        if (count == 0) throw damaged("a directory without entries", "at least the picture's size");
        ByteBuffer table = bytes(at + 2, 12 * count + 4);
        for (int i = 0; i < count; i++) {
            int tag = table.getShort(12 * i) & 0xFFFF;
            int type = table.getShort(12 * i + 2) & 0xFFFF;
            long values = Integer.toUnsignedLong(table.getInt(12 * i + 4));
            if (type == 0 || type >= TYPE_SIZES.length) continue; // a type of the future: TIFF 6.0 says skip the field
            long size = values * TYPE_SIZES[type];
            long offset = size <= 4 ? at + 2 + 12L * i + 8 : Integer.toUnsignedLong(table.getInt(12 * i + 8));
            if (offset + size > length) throw incomplete(file, length, offset + size);
            entries.putIfAbsent(tag, new Entry(type, values, offset));
        }
        next = Integer.toUnsignedLong(table.getInt(12 * count));
    }

    /** Another directory of the same file. @param offset where it begins */
    TiffDirectory at(long offset) throws UnreadableFrame, IOException {
        TiffDirectory other = new TiffDirectory(file, channel, length, order);
        other.readEntries(offset);
        return other;
    }

    /** Where the directory of the next picture begins, 0 if this is the last. */
    long next() {
        return next;
    }

    ByteOrder order() {
        return order;
    }

    long fileLength() {
        return length;
    }

    boolean has(int tag) {
        return entries.containsKey(tag);
    }

    /** One unsigned SHORT or LONG. */
    Optional<Long> number(int tag) throws UnreadableFrame, IOException {
        long[] all = numbers(tag, 1);
        return all.length == 0 ? Optional.empty() : Optional.of(all[0]);
    }

    long number(int tag, long absent) throws UnreadableFrame, IOException {
        return number(tag).orElse(absent);
    }

    /** The first values of a field, at most {@code most}; empty if the field is absent. */
    long[] numbers(int tag, long most) throws UnreadableFrame, IOException {
        Entry entry = entries.get(tag);
        if (entry == null || entry.count == 0) return new long[0];
        if (entry.type != SHORT && entry.type != LONG && entry.type != IFD) {
            throw damaged("type %d in field %d".formatted(entry.type, tag), "SHORT or LONG");
        }
        int n = (int) Math.min(entry.count, most);
        ByteBuffer values = bytes(entry.offset, n * TYPE_SIZES[entry.type]);
        long[] out = new long[n];
        for (int i = 0; i < n; i++) {
            out[i] = entry.type == SHORT
                    ? Short.toUnsignedLong(values.getShort())
                    : Integer.toUnsignedLong(values.getInt());
        }
        return out;
    }

    long count(int tag) {
        Entry entry = entries.get(tag);
        return entry == null ? 0 : entry.count;
    }

    /** The bytes of an UNDEFINED or BYTE field of at most {@code most} bytes. */
    Optional<byte[]> undefined(int tag, int most) throws UnreadableFrame, IOException {
        Entry entry = entries.get(tag);
        if (entry == null) return Optional.empty();
        long size = entry.count * TYPE_SIZES[entry.type];
        if (size > most) throw damaged("%d bytes in field %d".formatted(size, tag), "at most " + most);
        return Optional.of(bytes(entry.offset, (int) size).array());
    }

    /** Part of the file, in the file's byte order. */
    ByteBuffer bytes(long at, int size) throws UnreadableFrame, IOException {
        if (at + size > length) throw incomplete(file, length, at + size);
        ByteBuffer buffer = ByteBuffer.allocate(size).order(order);
        fill(channel, at, buffer);
        return buffer;
    }

    private static void fill(FileChannel channel, long at, ByteBuffer buffer) throws IOException {
        while (buffer.hasRemaining()) {
            if (channel.read(buffer, at + buffer.position()) < 0) {
                throw new EOFException("the file became shorter while it was read");
            }
        }
        buffer.flip();
    }

    UnreadableFrame damaged(String found, String expected) {
        return UnreadableFrame.of(Reason.DAMAGED, file, found, expected);
    }

    UnreadableFrame unsupported(String found, String expected) {
        return UnreadableFrame.of(Reason.UNSUPPORTED, file, found, expected);
    }

    private static UnreadableFrame incomplete(Path file, long length, long needed) {
        return UnreadableFrame.of(
                Reason.INCOMPLETE, file, "a TIFF of %d bytes".formatted(length), "at least %d bytes".formatted(needed));
    }

    /** What to say of picture data that ends outside the file. */
    UnreadableFrame incomplete(long needed) {
        return incomplete(file, length, needed);
    }

    Path file() {
        return file;
    }
}
