package org.stook.postgres;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;

/** One running instance a folder. The kernel drops the lock with the process, so nothing stale can be left behind. */
public final class FolderLock implements AutoCloseable {
    private final FileChannel channel;

    private FolderLock(FileChannel channel) {
        this.channel = channel;
    }

    /**
     * Takes the folder, which must be there, for this process.
     *
     * @throws PostgresUnavailable if it belongs to another running instance, whose process id the message gives
     */
    public static FolderLock take(Path home) throws IOException {
        Path file = home.resolve("lock");
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        boolean taken = false;
        try {
            taken = channel.tryLock() != null;
        } catch (OverlappingFileLockException e) {
            throw new PostgresUnavailable("the folder " + home + " is already in use by this very process", e);
        } finally {
            if (!taken) {
                channel.close();
            }
        }
        if (!taken) {
            throw new PostgresUnavailable("the folder " + home + " belongs to another running instance, process "
                    + Files.readString(file).trim() + "; stop that one or choose another folder");
        }
        channel.truncate(0);
        channel.write(
                ByteBuffer.wrap(Long.toString(ProcessHandle.current().pid()).getBytes(StandardCharsets.US_ASCII)));
        return new FolderLock(channel);
    }

    @Override
    public void close() throws IOException {
        channel.close();
    }
}
