package org.stook.tamper;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.List;
import java.util.concurrent.Callable;
import org.stook.postgres.LocalPostgres;
import org.stook.postgres.PostgresOptions;
import org.stook.tamper.Verify.Said;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The drill, from an empty folder to a table. */
@Command(
        name = "tamper-drill",
        mixinStandardHelpOptions = true,
        description = "Changes a sealed audit trail as the database's owner and shows whether verify names it.")
public final class Main implements Callable<Integer> {
    private static final String SEALED = "sealed";
    private static final String OLDER = "older";
    private static final String LONG = "long";
    private static final String CASE = "changed";
    private static final double SECONDS_ALLOWED = 60;

    @Option(names = "--service-jar", required = true, hidden = true)
    Path serviceJar = Path.of("");

    @Option(names = "--verify-jar", required = true, hidden = true)
    Path verifyJar = Path.of("");

    @Option(names = "--home", required = true, hidden = true)
    Path home = Path.of("");

    @Option(names = "--entries", description = "entries of the long trail (default: ${DEFAULT-VALUE}; 0: leave it out)")
    long entries = 2_000_000;

    private final Report report = new Report(System.out);

    public static void main(String[] args) {
        System.exit(new CommandLine(new Main()).execute(args));
    }

    static Connection connect(LocalPostgres postgres, String database) throws SQLException {
        return DriverManager.getConnection(postgres.url(database), postgres.username(), postgres.password());
    }

    @Override
    public Integer call() throws IOException, SQLException, InterruptedException {
        Files.createDirectories(home);
        try (LocalPostgres postgres = LocalPostgres.start(PostgresOptions.kept(home.resolve("postgres"), 0))) {
            Verify verify = new Verify(verifyJar, postgres);
            seal(postgres);
            untouched(verify);
            for (Deed deed : Deed.all()) change(postgres, verify, deed);
            restore(verify);
            sealAnew(postgres, verify);
            new Stamping(home, postgres, verify).run(serviceJar, report);
            if (entries > 0) time(postgres, verify);
        }
        return report.end();
    }

    /** 1000 entries, a copy of the database, 600 more. */
    private void seal(LocalPostgres postgres) throws IOException, SQLException, InterruptedException {
        postgres.ensureDatabase(SEALED);
        try (Service service = new Service(serviceJar, home, postgres, SEALED)) {
            service.awaitSchema();
            write(postgres, SEALED, 799);
            run(postgres, SEALED, "begin; select stook.write_audit('undone', 'person/ada'); rollback");
            write(postgres, SEALED, 200);
            service.awaitSealed();
        }
        run(postgres, "postgres", "create database " + OLDER + " template " + SEALED);
        try (Service service = new Service(serviceJar, home, postgres, SEALED)) {
            write(postgres, SEALED, 600);
            service.awaitSealed();
            awaitHead(1599);
        }
    }

    private void awaitHead(long size) throws IOException, InterruptedException {
        Path heads = kept(SEALED).resolve("heads.jsonl");
        while (!Files.exists(heads) || !Files.readString(heads).contains("\"size\":" + size)) Thread.sleep(200);
    }

    private Path kept(String database) {
        return Service.places(home, database);
    }

    static void write(LocalPostgres postgres, String database, long count) throws SQLException {
        run(
                postgres,
                database,
                "insert into stook.audit_entry (actor, kind, subject, body) select 'worker:table-' || n % 7, 'run.READY-RUNNING',"
                        + " 'run/' || n, jsonb_build_object('stack', n, 'attempt', 1, 'worker', 'table-' || n % 7) from generate_series(1, "
                        + count + ") n");
    }

    private static void run(LocalPostgres postgres, String database, String sql) throws SQLException {
        try (Connection c = connect(postgres, database);
                Statement statement = c.createStatement()) {
            statement.execute(sql);
        }
    }

    private void untouched(Verify verify) throws IOException, InterruptedException {
        report.say("nothing", verify.database(SEALED, kept(SEALED)), List.of(), 0);
    }

    private void change(LocalPostgres postgres, Verify verify, Deed deed)
            throws SQLException, IOException, InterruptedException {
        run(postgres, "postgres", "drop database if exists " + CASE);
        run(postgres, "postgres", "create database " + CASE + " template " + SEALED);
        run(postgres, CASE, "set session_replication_role = replica; " + deed.sql());
        report.say(deed.name(), verify.database(CASE, kept(SEALED)), deed.named(), 3);
    }

    private void restore(Verify verify) throws IOException, InterruptedException {
        report.say(
                "restore an older copy",
                verify.database(OLDER, kept(SEALED)),
                List.of("entries 1001 to 1600 (600): sealed, but not there"),
                3);
    }

    /** The owner edits and lets the service itself, with its own key, seal everything anew. */
    private void sealAnew(LocalPostgres postgres, Verify verify)
            throws SQLException, IOException, InterruptedException {
        run(postgres, "postgres", "drop database if exists " + CASE);
        run(postgres, "postgres", "create database " + CASE + " template " + SEALED);
        run(
                postgres,
                CASE,
                "set session_replication_role = replica; update stook.audit_entry set actor = 'eve' where id = 666;"
                        + " truncate stook.audit_leaf, stook.audit_node, stook.audit_token, stook.audit_seal;"
                        + " insert into stook.audit_open select id from stook.audit_entry");
        try (Service service = new Service(serviceJar, home, postgres, CASE)) {
            service.awaitSealed();
        }
        report.say(
                "edit, and have all sealed anew with the true key",
                verify.database(CASE, kept(SEALED)),
                List.of("entry 666: not what was sealed (edited)", "leaf 665 of the database's tree"),
                3);
    }

    private void time(LocalPostgres postgres, Verify verify) throws SQLException, IOException, InterruptedException {
        postgres.ensureDatabase(LONG);
        try (Service service = new Service(serviceJar, home, postgres, LONG)) {
            service.awaitSchema();
            write(postgres, LONG, entries);
            service.awaitSealed();
            Path leaves = kept(LONG).resolve("leaves.txt");
            while (!Files.exists(leaves) || Files.size(leaves) < entries * 85) Thread.sleep(500);
            Thread.sleep(1000);
        }
        run(postgres, LONG, "vacuum analyze");
        Said said = verify.database(LONG, kept(LONG));
        report.say("nothing, in %,d entries".formatted(entries), said, List.of(), 0);
        run(
                postgres,
                LONG,
                "set session_replication_role = replica;" + " update stook.audit_entry set actor = 'eve' where id = "
                        + entries / 2);
        report.say("edit one of them", verify.database(LONG, kept(LONG)), List.of("entry " + entries / 2 + ": not"), 3);
        report.check("within %.0f s".formatted(SECONDS_ALLOWED), said.seconds() <= SECONDS_ALLOWED);
    }
}
