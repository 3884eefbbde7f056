package org.stook.orders;

import com.zaxxer.hikari.HikariDataSource;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.stook.migrations.Schema;
import org.stook.postgres.testing.TestDatabase;

/** A small studio in a fresh database: one station, one set of settings, as many sealed stacks as a test asks for. */
public final class Studio {
    public static final String HASH = "ab".repeat(32);

    public final HikariDataSource source = new HikariDataSource();
    public final DataSourceTransactionManager transactions;
    public final JdbcClient jdbc;
    public final Runs runs;

    public Studio(Class<?> test) {
        TestDatabase database = TestDatabase.filled(test, Schema::migrate);
        // Pooled as in the programs: a password proof a connection is slow.
        source.setJdbcUrl(database.url());
        source.setUsername(database.username());
        source.setPassword(database.password());
        source.setMaximumPoolSize(4);
        transactions = new DataSourceTransactionManager(source);
        jdbc = JdbcClient.create(source);
        runs = new Runs(source, transactions);
        jdbc.sql(
                        "insert into stook.share (name, kind, root) values ('card', 'INTAKE', '/in'), ('wall', 'PUBLISH', '/out')")
                .update();
        jdbc.sql("insert into stook.tone_settings (id, body) values (?, '{\"exposure\": 0.5}')")
                .param(HASH)
                .update();
        jdbc.sql("insert into stook.station (name, intake_share_id, intake_folder, publish_share_id, publish_folder)"
                        + " values ('north', 1, 'north', 2, 'done')")
                .update();
        jdbc.sql("insert into stook.frame (sha256, bytes, format, width, height, bits) values (?, 9, 'tiff', 3, 2, 16)")
                .param(HASH)
                .update();
        announce("w1");
        announce("w2");
    }

    private void announce(String id) {
        new Workers(source).announce(new Workers.Announcement(id, "north-pc", 7, "0.1.0", 6, 6, 1L << 30));
    }

    /** A sealed stack of two frames and a stray. */
    public long stack() {
        long id = jdbc.sql("insert into stook.stack (station_id, subject) values (1, 'Fluorite, blue/7') returning id")
                .query(Long.class)
                .single();
        for (int i = 0; i < 3; i++) {
            jdbc.sql("insert into stook.stack_frame (stack_id, ordinal, sha256, share_id, rel_path, role, reason)"
                            + " values (?, ?, ?, 1, ?, ?, 'as shot')")
                    .params(id, i, HASH, "north/f" + i + ".tif", i == 2 ? "STRAY" : "SWEEP")
                    .update();
        }
        jdbc.sql("update stook.stack set state = 'SEALED', manifest_sha256 = lpad(to_hex(id), 64, '0') where id = ?")
                .param(id)
                .update();
        return id;
    }

    /** A run of a new stack, waiting. */
    public RunId run() {
        return run(Priorities.NORMAL);
    }

    public RunId run(int priority) {
        return runs.create(new NewRun(stack(), HASH, priority, "ada"));
    }

    public String state(RunId run) {
        return value("select state from stook.run where id = " + run);
    }

    public String value(String sql) {
        return String.valueOf(jdbc.sql(sql).query().singleValue());
    }

    public boolean hasTask(RunId run) {
        return value("select count(*) from jobs.scheduled_tasks where task_name = 'run' and task_instance = '" + run
                        + "'")
                .equals("1");
    }

    /** Kinds of the audit entries on the run, oldest first. */
    public List<String> trail(RunId run) {
        return jdbc.sql("select kind from stook.audit_entry where subject = ? order by id")
                .param("run/" + run)
                .query(String.class)
                .list();
    }
}
