package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * How a file looked from outside. Compared for equality only: the share's clock is not ours.
 *
 * @param size bytes
 * @param mtime as the share says, nanoseconds
 * @param key identity of the file on its file system, if there is one
 */
record Sighting(long size, long mtime, @Nullable String key) {

    /** Opens the file first: network file systems refresh their cached attributes then. */
    static Sighting of(Path file) throws IOException {
        Files.newInputStream(file).close();
        BasicFileAttributes seen = Files.readAttributes(file, BasicFileAttributes.class);
        Object key = seen.fileKey();
        return new Sighting(
                seen.size(), seen.lastModifiedTime().to(TimeUnit.NANOSECONDS), key == null ? null : key.toString());
    }
}
