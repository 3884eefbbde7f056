package org.stook.node;

import java.io.IOException;
import java.nio.channels.FileChannel;
import java.nio.channels.OverlappingFileLockException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.util.FileSystemUtils;

/**
 * This process's own folder on the local disk. A lock beside it says that the process lives, so that what a killed one left
 * behind is cleared away by the next that starts.
 */
final class Scratch implements AutoCloseable {
    private static final Logger LOG = LoggerFactory.getLogger(Scratch.class);
    private static final String LOCK = ".lock";

    private final Path folder;
    private final FileChannel channel;

    private Scratch(Path folder, FileChannel channel) {
        this.folder = folder;
        this.channel = channel;
    }

    /**
     * @param root the folder that all nodes of this machine may share
     * @param id the worker's id
     */
    static Scratch open(Path root, String id) throws IOException {
        Files.createDirectories(root);
        clear(root);
        FileChannel channel = lock(root.resolve(id + LOCK));
        if (channel == null) {
            throw new IOException("scratch folder " + root.resolve(id)
                    + " belongs to a running process: is there another" + " worker with the id '" + id + "'?");
        }
        return new Scratch(Files.createDirectories(root.resolve(id)), channel);
    }

    Path folder() {
        return folder;
    }

    private static void clear(Path root) throws IOException {
        List<Path> locks;
        try (Stream<Path> files = Files.list(root)) {
            locks = files.filter(f -> f.toString().endsWith(LOCK)).toList();
        }
        for (Path lock : locks) {
            try (FileChannel dead = lock(lock)) {
                if (dead != null) {
                    remove(lock);
                }
            }
        }
    }

    private static @Nullable FileChannel lock(Path file) throws IOException {
        FileChannel channel = FileChannel.open(file, StandardOpenOption.CREATE, StandardOpenOption.WRITE);
        try {
            if (channel.tryLock() != null) {
                return channel;
            }
        } catch (OverlappingFileLockException e) {
            LOG.debug("{} is locked by this very process", file);
        }
        channel.close();
        return null;
    }

    private static void remove(Path lock) throws IOException {
        String name = lock.getFileName().toString();
        FileSystemUtils.deleteRecursively(lock.resolveSibling(name.substring(0, name.length() - LOCK.length())));
        Files.deleteIfExists(lock);
    }

    @Override
    public void close() throws IOException {
        FileSystemUtils.deleteRecursively(folder);
        channel.close();
        LOG.debug("scratch folder {} cleared", folder);
    }
}
