package org.stook.imaging.composite;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.stream.Stream;

/**
 * A folder of its own that is gone, with all that is in it, when it is closed.
 *
 * @param path where it lies
 */
public record TemporaryFolder(Path path) implements AutoCloseable {
    /** One in the folder for temporary files. */
    public static TemporaryFolder create(String prefix) throws IOException {
        return new TemporaryFolder(Files.createTempDirectory(prefix));
    }

    /** One in {@code home}, which is made if it is not there yet. */
    public static TemporaryFolder createIn(Path home, String prefix) throws IOException {
        return new TemporaryFolder(Files.createTempDirectory(Files.createDirectories(home), prefix));
    }

    @Override
    public void close() throws IOException {
        try (Stream<Path> files = Files.walk(path)) {
            for (Path file : files.sorted(Comparator.reverseOrder()).toList()) Files.delete(file);
        }
    }
}
