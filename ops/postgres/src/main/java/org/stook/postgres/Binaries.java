package org.stook.postgres;

import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import org.apache.commons.compress.archivers.tar.TarArchiveEntry;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;

/** The server's programs, unpacked once from the archive on the class path into a folder named by the archive's hash. */
final class Binaries {
    private static final int OWNER_EXECUTE = 0100;

    private Binaries() {}

    /** The folder that holds {@code bin}, {@code lib} and {@code share}; several processes may ask for it at once. */
    static Path unpackedIn(Path home) throws IOException {
        byte[] archive = archive();
        Path folder = home.resolve("programs-" + digest(archive));
        if (!Files.exists(folder)) {
            Path unfinished = Files.createTempDirectory(home, "unpacking");
            unpack(archive, unfinished);
            Files.setPosixFilePermissions(unfinished, PosixFilePermissions.fromString("rwxr-xr-x"));
            moveUnlessThere(unfinished, folder);
        }
        return folder;
    }

    private static void moveUnlessThere(Path unfinished, Path folder) throws IOException {
        try {
            Files.move(unfinished, folder, StandardCopyOption.ATOMIC_MOVE);
        } catch (FileSystemException e) {
            if (!Files.exists(folder)) throw e;
            // Another process was quicker.
            Command.exitOf("rm", "-rf", unfinished.toString());
        }
    }

    private static byte[] archive() throws IOException {
        String machine = System.getProperty("os.arch");
        String name = "postgres-linux-" + (machine.equals("aarch64") ? "arm_64" : "x86_64") + ".txz";
        try (InputStream in = Binaries.class.getClassLoader().getResourceAsStream(name)) {
            if (in == null) {
                throw new PostgresUnavailable("no PostgreSQL for " + System.getProperty("os.name") + " on " + machine
                        + " in this program (" + name + " is not on the class path); use a PostgreSQL of your own");
            }
            return in.readAllBytes();
        }
    }

    private static void unpack(byte[] archive, Path target) throws IOException {
        try (var tar = new TarArchiveInputStream(new XZCompressorInputStream(new ByteArrayInputStream(archive)))) {
            for (TarArchiveEntry entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                Path path = target.resolve(entry.getName()).normalize();
                if (!path.startsWith(target)) {
                    throw new IOException("the archive's entry " + entry.getName() + " leads outside its folder");
                }
                place(tar, entry, path);
            }
        }
    }

    private static void place(TarArchiveInputStream tar, TarArchiveEntry entry, Path path) throws IOException {
        if (entry.isDirectory()) {
            Files.createDirectories(path);
            return;
        }
        Files.createDirectories(path.getParent());
        if (entry.isSymbolicLink()) {
            Files.createSymbolicLink(path, Path.of(entry.getLinkName()));
            return;
        }
        Files.copy(tar, path);
        if ((entry.getMode() & OWNER_EXECUTE) != 0) {
            Files.setPosixFilePermissions(path, PosixFilePermissions.fromString("rwxr-xr-x"));
        }
    }

    private static String digest(byte[] archive) {
        try {
            return HexFormat.of()
                    .formatHex(MessageDigest.getInstance("SHA-256").digest(archive))
                    .substring(0, 16);
        } catch (NoSuchAlgorithmException e) {
            throw new AssertionError("every Java platform has SHA-256", e);
        }
    }
}
