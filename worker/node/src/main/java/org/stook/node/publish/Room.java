package org.stook.node.publish;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.stook.node.publish.Shares.Trouble;

/**
 * How much must be free in a folder that is written to, so that minutes of work are not begun for a disk that cannot take
 * their result.
 *
 * @param leastFree bytes
 */
public record Room(long leastFree) {

    /**
     * What is wrong with a folder that is to be written to.
     *
     * @param name what people call it
     */
    public Optional<Trouble> trouble(String name, Path folder) {
        // Asks the file system itself: as root, too, it says no on one that is mounted read-only.
        if (!Files.isWritable(folder)) {
            return Optional.of(new Trouble("READ_ONLY", name + " cannot be written to here (" + folder + ")"));
        }
        long free = folder.toFile().getUsableSpace();
        return free >= leastFree
                ? Optional.empty()
                : Optional.of(new Trouble(
                        "DISK_FULL",
                        "%s is full: %d MiB are free, %d are wanted (%s)"
                                .formatted(name, free >> 20, leastFree >> 20, folder)));
    }
}
