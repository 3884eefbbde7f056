package org.stook.imaging.composite;

import java.io.EOFException;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.Queue;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What is worked out of each frame and needed again, in a file without a name that is gone when it is closed or the process
 * ends: so memory does not grow with the sweep. Safe for several threads.
 */
final class Spool implements AutoCloseable {
    /** Bytes moved at a time where any number will do: enough that the system takes them in large pieces. */
    private static final int CHUNK = 1 << 20;

    private final FileChannel file;
    private final AtomicLong end = new AtomicLong();
    private final Queue<Room> rooms = new ConcurrentLinkedQueue<>();

    Spool() throws IOException {
        Path path = Files.createTempFile(folder(), "stook-spool-", ".bin");
        file = FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    }

    /** Where spools lie: with other temporary files. */
    static Path folder() {
        return Path.of(System.getProperty("java.io.tmpdir"));
    }

    /** Where rows of codes lie. */
    record Place(long at, int width, int height) {
        private long of(int row) {
            return at + 2L * width * row;
        }
    }

    /** Keeps a place free, to be written in parts. */
    Place reserve(int width, int height) {
        return new Place(end.getAndAdd(2L * width * height), width, height);
    }

    /** Writes {@code rows} rows from row {@code first} on. */
    void write(Place place, int first, int rows, short[] codes) throws IOException {
        Room room = room(rows * place.width);
        room.bytes.asShortBuffer().put(codes, 0, rows * place.width);
        write(room.bytes, place.of(first));
        rooms.add(room);
    }

    /** Writes them behind all that is there. @return where they lie */
    long append(byte[] bytes) throws IOException {
        long place = end.getAndAdd(bytes.length);
        Room room = room(CHUNK / 2);
        for (int i = 0; i < bytes.length; i += CHUNK) {
            int count = Math.min(CHUNK, bytes.length - i);
            write(room.bytes.clear().put(bytes, i, count).flip(), place + i);
        }
        rooms.add(room);
        return place;
    }

    private void write(ByteBuffer bytes, long place) throws IOException {
        long at = place;
        while (bytes.hasRemaining()) at += file.write(bytes, at);
    }

    /** Fills {@code bytes} with what was appended. */
    void read(long place, byte[] bytes) throws IOException {
        Room room = room(CHUNK / 2);
        for (int i = 0; i < bytes.length; i += CHUNK) {
            int count = Math.min(CHUNK, bytes.length - i);
            read(place + i, room.bytes.clear().limit(count));
            room.bytes.flip().get(bytes, i, count);
        }
        rooms.add(room);
    }

    private void read(long place, ByteBuffer bytes) throws IOException {
        long at = place;
        while (bytes.hasRemaining()) {
            int read = file.read(bytes, at);
            if (read < 0) throw new EOFException("the spool of frames ends early");
            at += read;
        }
    }

    /** What is done with codes that were read; they are only lent. */
    interface Use {
        /** @param count of the codes, from the first on */
        void with(short[] codes, int count);
    }

    /** Reads {@code rows} rows from row {@code first} on. */
    void read(Place place, int first, int rows, Use use) throws IOException {
        Room room = room(rows * place.width);
        read(place.of(first), room.bytes);
        room.bytes.flip().asShortBuffer().get(room.codes, 0, rows * place.width);
        use.with(room.codes, rows * place.width);
        rooms.add(room);
    }

    /** What codes pass through: used again, for all frames pass through it. The bytes lie where the system can fill them. */
    private record Room(ByteBuffer bytes, short[] codes) {
        Room(int size) {
            this(ByteBuffer.allocateDirect(2 * size).order(ByteOrder.nativeOrder()), new short[size]);
        }
    }

    /** Room with as many bytes as {@code count} codes take. */
    private Room room(int count) {
        Room free = rooms.poll();
        Room room = free != null && free.codes.length >= count ? free : new Room(count);
        room.bytes.clear().limit(2 * count);
        return room;
    }

    /** Returns at once: what the system does to let go of a file as large as a stack can be done while others go on. */
    @Override
    public void close() {
        Thread closing = new Thread(this::letGo, "spool-closing");
        closing.setDaemon(true);
        closing.start();
    }

    private void letGo() {
        try {
            file.close();
        } catch (IOException e) {
            throw new UncheckedIOException("the spool of frames cannot be closed", e);
        }
    }
}
