package org.stook.node.publish;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.file.AccessDeniedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.security.DigestInputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import java.util.List;
import java.util.stream.Stream;
import org.springframework.util.FileSystemUtils;
import org.stook.imaging.frame.Parallel;

/** Files that must outlive a power cut. */
public final class Durable {
    private static final int FILES_AT_A_TIME = 8;

    private Durable() {}

    /**
     * SHA-256 (FIPS 180-4) of a file's bytes, 64 hex digits. Opens the file anew: a network file system then shows what the
     * server holds.
     */
    public static String sha256(Path file) throws IOException {
        MessageDigest digest = sha256();
        Failpoint.hit("read");
        try (InputStream in = new DigestInputStream(Files.newInputStream(file), digest)) {
            in.transferTo(OutputStream.nullOutputStream());
        }
        return HexFormat.of().formatHex(digest.digest());
    }

    /**
     * Copies to a new file and forces it to the disk. After an exception nothing is left: what a failed force has dropped
     * cannot be forced again, so the only way is from the start.
     */
    static void copy(Path from, Path to) throws IOException {
        Files.createDirectories(parent(to));
        try {
            copyForced(from, to);
        } catch (IOException e) {
            deleteQuietly(to, e);
            throw e;
        }
    }

    /**
     * Copies a folder with all that is in it; likewise nothing of it is left after an exception. Some files at a time: each
     * waits for the disk, and disks, file systems and networks make one wait of several.
     */
    static void copyFolder(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            List<Path> files = all.filter(Files::isRegularFile).toList();
            Parallel.forEach(
                    files.size(),
                    FILES_AT_A_TIME,
                    i -> copyUnchecked(files.get(i), to.resolve(from.relativize(files.get(i)))));
        } catch (UncheckedIOException e) {
            FileSystemUtils.deleteRecursively(to);
            throw e.getCause();
        }
    }

    private static void copyUnchecked(Path from, Path to) {
        try {
            copy(from, to);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void copyForced(Path from, Path to) throws IOException {
        // Closed by this statement, so that an error that shows only at closing is thrown too.
        try (FileChannel in = FileChannel.open(from);
                FileChannel out = FileChannel.open(
                        to,
                        StandardOpenOption.CREATE,
                        StandardOpenOption.TRUNCATE_EXISTING,
                        StandardOpenOption.WRITE)) {
            long size = in.size();
            Failpoint.hit("write");
            for (long at = 0; at < size; ) {
                long written = in.transferTo(at, size - at, out);
                if (written <= 0) {
                    throw new IOException(from + " became shorter while it was copied to " + to);
                }
                at += written;
            }
            Failpoint.hit("force");
            out.force(true);
        }
        Failpoint.hit("closed");
    }

    /** Renames within a file system, so that readers see the whole file or none. The rename itself is forced too. */
    static void rename(Path from, Path to) throws IOException {
        Files.createDirectories(parent(to));
        Failpoint.hit("rename");
        Files.move(from, to, StandardCopyOption.ATOMIC_MOVE);
        Failpoint.hit("renamed");
        forceFolder(parent(to));
    }

    static void forceFolder(Path folder) throws IOException {
        Failpoint.hit("force-folder");
        try (FileChannel channel = FileChannel.open(folder, StandardOpenOption.READ)) {
            channel.force(true);
        } catch (AccessDeniedException e) {
            if (Files.isReadable(folder) && System.getProperty("os.name").startsWith("Windows")) {
                return; // Cannot be opened there; NTFS keeps its own journal.
            }
            throw e;
        }
    }

    static Path parent(Path file) {
        Path parent = file.getParent();
        if (parent == null) {
            throw new IllegalArgumentException(file + " lies in no folder");
        }
        return parent;
    }

    private static void deleteQuietly(Path file, IOException reason) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            reason.addSuppressed(e);
        }
    }

    private static MessageDigest sha256() {
        try {
            return MessageDigest.getInstance("SHA-256");
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java platform has SHA-256", e);
        }
    }
}
