package org.stook.postgres;

import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * A real PostgreSQL beside this JVM. It listens on 127.0.0.1 only, asks for a password (scram), is stopped by
 * {@link #close()}, and is shut down cleanly by the kernel's signal if this JVM is killed.
 */
public final class LocalPostgres implements AutoCloseable {
    private static final Duration START_PATIENCE = Duration.ofSeconds(60);
    private static final long STOP_PATIENCE_SECONDS = 60;

    private final FolderLock lock;
    private final DataFolder folder;
    private final String password;
    private final int port;
    private final Process process;

    private LocalPostgres(PostgresOptions options, FolderLock lock) throws IOException {
        this.lock = lock;
        this.folder = new DataFolder(options.home());
        folder.checkRoom();
        Account account = Account.detect(options.home());
        Path programs = Binaries.unpackedIn(account.programs(options.home()));
        folder.stopOrphan();
        folder.turnLog();
        password = folder.password();
        port = usablePort(options.port());
        if (!folder.exists()) {
            folder.create(programs, account, options.durable());
        }
        account.own(options.home());
        process = Keeper.start(
                Command.logged(command(programs, account, options.parameters()), folder.log()), "local-postgres");
        awaitReady();
    }

    /**
     * Starts the server and waits until it answers. The first start in a folder unpacks the programs and makes the cluster.
     *
     * @throws PostgresUnavailable with what was found: port taken, disk full, folder in use (by which process), initdb or
     *     the server ended (with the end of its log)
     */
    public static LocalPostgres start(PostgresOptions options) throws PostgresUnavailable {
        FolderLock lock = null;
        try {
            Files.createDirectories(options.home());
            lock = FolderLock.take(options.home());
            return new LocalPostgres(options, lock);
        } catch (IOException e) {
            release(lock);
            throw PostgresUnavailable.of("starting PostgreSQL in " + options.home(), e);
        }
    }

    /** JDBC address of a database of this server. */
    public String url(String database) {
        return "jdbc:postgresql://127.0.0.1:" + port + "/" + database;
    }

    public String username() {
        return DataFolder.SUPERUSER;
    }

    public String password() {
        return password;
    }

    public int port() {
        return port;
    }

    /** Process id of the server. */
    public long pid() {
        return process.pid();
    }

    /** Makes the database unless it is there. */
    public void ensureDatabase(String name) throws SQLException {
        try (Connection c = DriverManager.getConnection(url("postgres"), username(), password);
                var there = c.prepareStatement("select 1 from pg_database where datname = ?");
                var create = c.createStatement()) {
            there.setString(1, name);
            if (!there.executeQuery().next()) {
                create.execute("create database " + create.enquoteIdentifier(name, true));
            }
        }
    }

    /** Fast shutdown: clients are disconnected, a checkpoint is written. */
    @Override
    public void close() throws IOException {
        stop();
        lock.close();
    }

    private void stop() {
        if (!process.isAlive()) {
            return;
        }
        Command.exitOf("kill", "-INT", Long.toString(process.pid()));
        try {
            if (!process.waitFor(STOP_PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                process.destroyForcibly();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private List<String> command(Path programs, Account account, Map<String, String> parameters) {
        List<String> command = new ArrayList<>(account.prefix());
        // A session of its own keeps Ctrl-C for this JVM alone. The change of user must stand before the parent-death
        // signal, which it would clear.
        command.addAll(List.of("setsid", "setpriv", "--pdeathsig", "INT"));
        command.add(programs.resolve("bin/postgres").toString());
        command.addAll(List.of("-D", folder.data().toString(), "-p", Integer.toString(port)));
        command.addAll(List.of("-c", "listen_addresses=127.0.0.1", "-c", "unix_socket_directories="));
        new TreeMap<>(parameters).forEach((name, value) -> command.addAll(List.of("-c", name + "=" + value)));
        return command;
    }

    private void awaitReady() throws IOException {
        long end = System.nanoTime() + START_PATIENCE.toNanos();
        while (true) {
            if (!process.isAlive()) {
                throw new PostgresUnavailable("PostgreSQL ended with code " + process.exitValue()
                        + " at its start; its log " + folder.log() + " ends: " + folder.logEnd());
            }
            try (Connection ready = DriverManager.getConnection(url("postgres"), username(), password)) {
                return;
            } catch (SQLException e) {
                if (System.nanoTime() > end) {
                    stop();
                    throw new PostgresUnavailable(
                            "PostgreSQL did not answer within " + START_PATIENCE.toSeconds() + " s: " + e.getMessage()
                                    + "; see " + folder.log(),
                            e);
                }
                pause();
            }
        }
    }

    private static void pause() throws IOException {
        try {
            Thread.sleep(20);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new PostgresUnavailable("interrupted while PostgreSQL was starting", e);
        }
    }

    private static int usablePort(int wanted) throws IOException {
        try (ServerSocket socket = new ServerSocket(wanted, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        } catch (IOException e) {
            throw new PostgresUnavailable(
                    "port " + wanted + " on 127.0.0.1 is taken by another program (" + e.getMessage()
                            + "); stop it or choose another port for PostgreSQL",
                    e);
        }
    }

    private static void release(@Nullable FolderLock lock) {
        try {
            if (lock != null) {
                lock.close();
            }
        } catch (IOException e) {
            // The failure being reported matters more, and the kernel drops the lock with the process anyway.
        }
    }
}
