package org.stook.launcher;

import java.io.IOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.stook.postgres.FolderLock;

/** The folder of everything, held by one running instance at a time. */
final class Home {
    /** A database, its journal and room for a few composites. */
    static final long ROOM = 1L << 30;

    private Home() {}

    /**
     * Makes the folders and takes the lock.
     *
     * @throws IOException if the disk is full, a folder cannot be made, or the home is another running instance's
     */
    static FolderLock open(StudioPlan plan) throws IOException {
        try {
            Files.createDirectories(plan.home());
            checkRoom(plan.home(), Files.getFileStore(plan.home()).getUsableSpace());
            Files.createDirectories(plan.logs());
            Files.createDirectories(plan.published());
            for (Path intake : plan.stations().values()) Files.createDirectories(intake);
            return FolderLock.take(plan.home());
        } catch (FileSystemException e) {
            throw new LaunchFailure("the folder " + plan.home() + " cannot be used: " + e, e);
        }
    }

    static void checkRoom(Path home, long free) throws LaunchFailure {
        if (free < ROOM) {
            throw new LaunchFailure("the disk of " + home + " is full: " + free + " bytes are free, at least " + ROOM
                    + " bytes are needed; free space or choose another folder with --home");
        }
    }
}
