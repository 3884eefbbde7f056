package org.stook.postgres;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.BufferedReader;
import java.io.IOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Real servers, real processes, real kills. One folder serves most tests, so that its programs are unpacked once. */
class LocalPostgresTest {
    private static final Path HOME = Path.of("target", "test-local-postgres").toAbsolutePath();

    @Test
    void dataAreKeptAndSafe() throws Exception {
        try (LocalPostgres first = LocalPostgres.start(PostgresOptions.kept(HOME, 0))) {
            first.ensureDatabase("studio");
            first.ensureDatabase("studio");
            run(first, "create table if not exists seen (n int)");
            run(first, "insert into seen values (1)");
            assertThat(ask(first, "show fsync")).isEqualTo("on");
            assertThat(ask(first, "show synchronous_commit")).isEqualTo("on");
            assertThat(ask(first, "show data_checksums")).isEqualTo("on");
            assertThat(ask(first, "show listen_addresses")).isEqualTo("127.0.0.1");
            assertThatThrownBy(() -> DriverManager.getConnection(first.url("studio"), first.username(), "guess"))
                    .hasMessageContaining("password authentication failed");
            assertThatThrownBy(() -> LocalPostgres.start(PostgresOptions.kept(HOME, 0)))
                    .isInstanceOf(PostgresUnavailable.class)
                    .hasMessageContaining("already in use by this very process");
        }
        try (LocalPostgres second = LocalPostgres.start(PostgresOptions.kept(HOME, 0))) {
            assertThat(ask(second, "select count(*) > 0 from seen")).isEqualTo("t");
        }
    }

    @Test
    void aServerEndsWithItsKilledOwnerAndTheFolderCanBeUsedAgain() throws Exception {
        Process owner = new ProcessBuilder(
                        ProcessHandle.current().info().command().orElseThrow(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Owner.class.getName(),
                        HOME.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        long server;
        try (BufferedReader said = owner.inputReader()) {
            server = Long.parseLong(said.readLine());
            assertThatThrownBy(() -> LocalPostgres.start(PostgresOptions.kept(HOME, 0)))
                    .hasMessageContaining("belongs to another running instance, process " + owner.pid());
            owner.destroyForcibly().waitFor();
        }
        var left = ProcessHandle.of(server);
        if (left.isPresent()) {
            left.get().onExit().get(20, TimeUnit.SECONDS);
        }
        assertThat(HOME.resolve("data/postmaster.pid")).doesNotExist();
        LocalPostgres.start(PostgresOptions.kept(HOME, 0)).close();
    }

    /** A process that starts a server, says which, and waits to be killed. */
    static final class Owner {
        public static void main(String[] args) throws Exception {
            System.out.println(LocalPostgres.start(PostgresOptions.kept(Path.of(args[0]), 0))
                    .pid());
            Thread.sleep(60_000);
        }
    }

    @Test
    void aServerLeftOverIsStopped() throws Exception {
        LocalPostgres.start(PostgresOptions.kept(HOME, 0)).close();
        Account account = Account.detect(HOME);
        Process orphan = Command.logged(
                        Command.concat(
                                account.prefix(),
                                List.of(
                                        Binaries.unpackedIn(account.programs(HOME))
                                                .resolve("bin/postgres")
                                                .toString(),
                                        "-D",
                                        HOME.resolve("data").toString(),
                                        "-p",
                                        Integer.toString(freePort()),
                                        "-c",
                                        "unix_socket_directories=")),
                        HOME.resolve("orphan.log"))
                .start();
        Path pidFile = HOME.resolve("data/postmaster.pid");
        while (!Files.exists(pidFile) || Files.size(pidFile) == 0) {
            assertThat(orphan.isAlive()).isTrue();
            Thread.onSpinWait();
        }
        LocalPostgres.start(PostgresOptions.kept(HOME, 0)).close();
        assertThat(orphan.waitFor(1, TimeUnit.SECONDS)).isTrue();
    }

    @Test
    void aPortThatIsTakenIsNamed() throws Exception {
        try (ServerSocket taken = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            assertThatThrownBy(() -> LocalPostgres.start(PostgresOptions.kept(HOME, taken.getLocalPort())))
                    .isInstanceOf(PostgresUnavailable.class)
                    .hasMessageContaining("port " + taken.getLocalPort() + " on 127.0.0.1 is taken");
        }
        // The folder is free again after a failure.
        LocalPostgres.start(PostgresOptions.kept(HOME, 0)).close();
    }

    /** For root this takes the way of containers that refuse user namespaces; for others it is a plain start. */
    @Test
    void rootCanBecomeNobodyAndAFailedInitdbNamesItsLog() throws Exception {
        Path home = Files.createTempDirectory("stook-postgres");
        System.setProperty("stook.postgres.account", "nobody");
        try {
            Files.createDirectories(home.resolve("data"));
            Files.writeString(home.resolve("data/notes.txt"), "not a cluster");
            assertThatThrownBy(() -> LocalPostgres.start(PostgresOptions.throwaway(home)))
                    .hasMessageContaining("initdb ended with code 1")
                    .hasMessageContaining(home.resolve("postgres.log").toString())
                    .hasMessageContaining("not empty");
            Files.delete(home.resolve("data/notes.txt"));
            try (LocalPostgres server = LocalPostgres.start(PostgresOptions.throwaway(home))) {
                assertThat(ask(server, "select 1")).isEqualTo("1");
                assertThat(Files.getOwner(home.resolve("data/PG_VERSION")).getName())
                        .isNotEqualTo("root");
            }
            // Once somebody's, the data stay theirs, whatever root could do now.
            System.clearProperty("stook.postgres.account");
            LocalPostgres.start(PostgresOptions.throwaway(home)).close();
        } finally {
            System.clearProperty("stook.postgres.account");
            Command.exitOf("rm", "-rf", home.toString());
        }
    }

    @Test
    void nobodyMustBeAbleToReachTheFolder(@TempDir Path closed) throws Exception {
        Files.setPosixFilePermissions(closed, PosixFilePermissions.fromString("rwx------"));
        Path home = Files.createDirectory(closed.resolve("home"));
        assertThatThrownBy(() -> Account.user("nobody").own(home))
                .isInstanceOf(PostgresUnavailable.class)
                .hasMessageContaining("user nobody cannot enter " + closed);
    }

    @Test
    void aFullDiskIsSaidToBeFull(@TempDir Path home) {
        assertThatThrownBy(() -> new DataFolder(home).checkRoom(20L << 20))
                .hasMessageContaining("the disk of " + home + " is full: 20 MiB are free");
        assertThat(PostgresUnavailable.of(
                        "unpacking", new FileSystemException("/x/y", null, "No space left on device")))
                .hasMessageContaining("the disk is full (/x/y), found while unpacking");
    }

    private static int freePort() throws IOException {
        try (ServerSocket socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
            return socket.getLocalPort();
        }
    }

    private static void run(LocalPostgres server, String sql) throws SQLException {
        try (Connection c = connect(server);
                var s = c.createStatement()) {
            s.execute(sql);
        }
    }

    private static String ask(LocalPostgres server, String sql) throws SQLException {
        try (Connection c = connect(server);
                var s = c.createStatement();
                var rows = s.executeQuery(sql)) {
            rows.next();
            return rows.getString(1);
        }
    }

    private static Connection connect(LocalPostgres server) throws SQLException {
        return DriverManager.getConnection(server.url("postgres"), server.username(), server.password());
    }
}
