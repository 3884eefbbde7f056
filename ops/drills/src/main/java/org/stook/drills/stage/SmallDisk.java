package org.stook.drills.stage;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** A disk in memory, mounted where a share is expected. Needs root, for it mounts. */
public final class SmallDisk implements AutoCloseable {
    private final Path disk;
    private final Path seen;

    private SmallDisk(Path disk, Path seen) {
        this.disk = disk;
        this.seen = seen;
    }

    /**
     * @param disk folder that the disk itself is mounted at
     * @param seen folder where it is seen, and can be gone while the disk keeps what is on it
     */
    static SmallDisk mount(Path disk, Path seen, int mebibytes) throws IOException, InterruptedException {
        Files.createDirectories(disk);
        Processes.must(List.of("mount", "-t", "tmpfs", "-o", "size=" + mebibytes + "m", "drill", disk.toString()));
        SmallDisk small = new SmallDisk(disk, seen);
        small.appear();
        return small;
    }

    /** Takes all room that is left. */
    public void fill() throws IOException {
        byte[] ballast = new byte[1 << 16];
        try (OutputStream out = Files.newOutputStream(ballast())) {
            while (true) {
                out.write(ballast);
            }
        } catch (IOException full) {
            if (!String.valueOf(full.getMessage()).contains("No space left")) {
                throw full;
            }
        }
    }

    public void empty() throws IOException {
        Files.delete(ballast());
    }

    private Path ballast() {
        return disk.resolve("ballast");
    }

    /** Read-only, as after an error of the file system. */
    public void lock() throws IOException, InterruptedException {
        Processes.must(List.of("mount", "-o", "remount,ro,bind", seen.toString()));
    }

    public void unlock() throws IOException, InterruptedException {
        Processes.must(List.of("mount", "-o", "remount,rw,bind", seen.toString()));
    }

    /** Gone: what is left is the empty folder below. */
    public void vanish() throws IOException, InterruptedException {
        Processes.must(List.of("umount", "-l", seen.toString()));
    }

    public final void appear() throws IOException, InterruptedException {
        Processes.must(List.of("mount", "--bind", disk.toString(), seen.toString()));
    }

    @Override
    public void close() throws IOException {
        try {
            Processes.run("umount", "-l", seen.toString());
            Processes.run("umount", "-l", disk.toString());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
