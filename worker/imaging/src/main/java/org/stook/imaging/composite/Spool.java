package org.stook.imaging.composite;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.concurrent.atomic.AtomicLong;

/**
 * What is worked out of each frame and needed again, in a file without a name that is gone when it is closed or the process
 * ends: so memory does not grow with the sweep. Safe for several threads.
 */
final class Spool implements AutoCloseable {
    private final FileChannel file;
    private final AtomicLong end = new AtomicLong();

    /** In the folder for temporary files. */
    Spool() throws IOException {
        Path path = Files.createTempFile("stook-spool-", ".bin");
        file = FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
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
        ByteBuffer bytes = buffer(place, rows);
        bytes.asShortBuffer().put(codes, 0, rows * place.width);
        long at = place.of(first);
        while (bytes.hasRemaining()) at += file.write(bytes, at);
    }

    /** Reads {@code rows} rows from row {@code first} on. */
    void read(Place place, int first, int rows, short[] codes) throws IOException {
        ByteBuffer bytes = buffer(place, rows);
        long at = place.of(first);
        while (bytes.hasRemaining()) {
            int read = file.read(bytes, at);
            if (read < 0) throw new EOFException("the spool of frames ends early");
            at += read;
        }
        bytes.flip().asShortBuffer().get(codes, 0, rows * place.width);
    }

    private static ByteBuffer buffer(Place place, int rows) {
        return ByteBuffer.allocate(2 * rows * place.width).order(ByteOrder.nativeOrder());
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
