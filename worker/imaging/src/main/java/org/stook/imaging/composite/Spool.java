package org.stook.imaging.composite;

import java.io.EOFException;
import java.io.IOException;
import java.nio.ByteBuffer;
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
    private static final int CHUNK = 1 << 18;

    private final FileChannel file;
    private final AtomicLong end = new AtomicLong();

    /** In the folder for temporary files. */
    Spool() throws IOException {
        Path path = Files.createTempFile("stook-spool-", ".bin");
        file = FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    }

    /** Where something lies. */
    record Place(long at, int count) {}

    Place write(short[] values) throws IOException {
        Place place = new Place(end.getAndAdd(2L * values.length), values.length);
        ByteBuffer chunk = ByteBuffer.allocate(CHUNK);
        for (int done = 0; done < values.length; done += CHUNK / 2) {
            int count = Math.min(CHUNK / 2, values.length - done);
            chunk.clear().limit(2 * count);
            chunk.asShortBuffer().put(values, done, count);
            long at = place.at() + 2L * done;
            while (chunk.hasRemaining()) at += file.write(chunk, at);
        }
        return place;
    }

    short[] read(Place place) throws IOException {
        short[] values = new short[place.count()];
        ByteBuffer chunk = ByteBuffer.allocate(CHUNK);
        for (int done = 0; done < values.length; done += CHUNK / 2) {
            int count = Math.min(CHUNK / 2, values.length - done);
            chunk.clear().limit(2 * count);
            long at = place.at() + 2L * done;
            while (chunk.hasRemaining()) {
                int read = file.read(chunk, at);
                if (read < 0) throw new EOFException("the spool of frames ends early");
                at += read;
            }
            chunk.flip().asShortBuffer().get(values, done, count);
        }
        return values;
    }

    @Override
    public void close() throws IOException {
        file.close();
    }
}
