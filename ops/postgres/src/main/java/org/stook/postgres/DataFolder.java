package org.stook.postgres;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** The kept data: {@code home/data}, its superuser's password and the log. */
final class DataFolder {
    static final String SUPERUSER = "stook";
    private static final long ROOM_FOR_A_NEW_ONE = 150L << 20;
    private static final long LONG_LOG = 10L << 20;
    private static final long ORPHAN_PATIENCE_SECONDS = 30;

    private final Path home;

    DataFolder(Path home) {
        this.home = home;
    }

    Path data() {
        return home.resolve("data");
    }

    Path log() {
        return home.resolve("postgres.log");
    }

    boolean exists() {
        return Files.exists(data().resolve("PG_VERSION"));
    }

    void checkRoom() throws IOException {
        checkRoom(Files.getFileStore(home).getUsableSpace());
    }

    void checkRoom(long free) throws PostgresUnavailable {
        if (!exists() && free < ROOM_FOR_A_NEW_ONE) {
            throw new PostgresUnavailable("the disk of " + home + " is full: " + (free >> 20)
                    + " MiB are free and a new database needs " + (ROOM_FOR_A_NEW_ONE >> 20) + " MiB; free space");
        }
    }

    /** The superuser's password, made at the first start and readable by its owner alone. */
    String password() throws IOException {
        Path file = home.resolve("password");
        if (!Files.exists(file)) {
            byte[] bytes = new byte[24];
            new SecureRandom().nextBytes(bytes);
            writePrivately(file, Base64.getUrlEncoder().withoutPadding().encodeToString(bytes));
        }
        return Files.readString(file);
    }

    /** Makes the cluster: scram, checksums, UTF-8 with a collation that no system update can change. */
    void create(Path programs, Account account, boolean durable) throws IOException {
        Path pwfile = home.resolve("password.initdb");
        Files.deleteIfExists(pwfile);
        writePrivately(pwfile, password());
        account.own(home);
        List<String> initdb = List.of(
                programs.resolve("bin/initdb").toString(),
                "--pgdata=" + data(),
                "--username=" + SUPERUSER,
                "--encoding=UTF8",
                "--locale-provider=builtin",
                "--locale=C.UTF-8",
                "--auth=scram-sha-256",
                "--pwfile=" + pwfile,
                durable ? "--data-checksums" : "--no-sync",
                "--no-instructions");
        int code = Command.exitOf(Command.concat(account.prefix(), initdb), log());
        Files.delete(pwfile);
        if (code != 0) {
            throw new PostgresUnavailable(
                    "initdb ended with code " + code + " in " + data() + "; its log " + log() + " ends: " + logEnd());
        }
    }

    /**
     * Stops a server that a killed JVM left behind, where the kernel did not do it. It is known by its working folder:
     * a process id alone may belong to somebody else by now.
     */
    void stopOrphan() throws IOException {
        Path pidFile = data().resolve("postmaster.pid");
        if (!Files.exists(pidFile) || Files.size(pidFile) == 0) {
            return;
        }
        long pid = Long.parseLong(Files.readAllLines(pidFile).get(0).trim());
        Optional<ProcessHandle> server = ProcessHandle.of(pid);
        Path cwd = Path.of("/proc/" + pid + "/cwd");
        if (server.isEmpty() || !Files.exists(cwd) || !cwd.toRealPath().equals(data().toRealPath())) {
            return;
        }
        Command.exitOf("kill", "-INT", Long.toString(pid));
        try {
            server.get().onExit().get(ORPHAN_PATIENCE_SECONDS, TimeUnit.SECONDS);
        } catch (InterruptedException | ExecutionException | TimeoutException e) {
            throw new PostgresUnavailable(
                    "the PostgreSQL left over from an earlier run, process " + pid + ", did not stop within "
                            + ORPHAN_PATIENCE_SECONDS + " s; stop it by hand",
                    e);
        }
    }

    /** Starts a new log when the old one has become long; one old one is kept. */
    void turnLog() throws IOException {
        if (Files.exists(log()) && Files.size(log()) > LONG_LOG) {
            Files.move(log(), home.resolve("postgres.log.old"), StandardCopyOption.REPLACE_EXISTING);
        }
    }

    /** The log's last lines, for a message. */
    String logEnd() {
        try {
            List<String> lines = Files.readAllLines(log());
            return String.join(" | ", lines.subList(Math.max(0, lines.size() - 4), lines.size()));
        } catch (IOException e) {
            return "(unreadable: " + e.getMessage() + ")";
        }
    }

    private static void writePrivately(Path file, String text) throws IOException {
        Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        Files.writeString(file, text);
    }
}
