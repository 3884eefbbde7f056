package org.stook.migrations;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.postgres.testing.TestDatabase;

/** Whoever reads on from the greatest number they saw gets every publication once, however the transactions interleave. */
class PublicationOrderTest {
    private static final String HASH = "ab".repeat(32);
    private static final int WRITERS = 4;

    private static TestDatabase database;
    private final List<Connection> writers = new ArrayList<>();
    private Connection reader;
    private final List<Long> pulled = new ArrayList<>();
    private long cursor;

    @BeforeAll
    static void prepare() throws SQLException {
        database = TestDatabase.filled(PublicationOrderTest.class, Schema::migrate);
        try (Connection connection = database.dataSource().getConnection();
                Statement sql = connection.createStatement()) {
            sql.execute("insert into stook.share (name, kind, root) values ('card', 'INTAKE', '/in')");
            sql.execute(
                    "insert into stook.station (name, intake_share_id, intake_folder) values ('north', 1, 'north')");
            sql.execute("insert into stook.tone_settings (id, body) values ('" + HASH + "', '{}')");
        }
    }

    @BeforeEach
    void open() throws SQLException {
        for (int i = 0; i < WRITERS; i++) {
            Connection writer = database.dataSource().getConnection();
            writer.setAutoCommit(false);
            writers.add(writer);
        }
        reader = database.dataSource().getConnection();
        cursor = newest();
    }

    @AfterEach
    void close() throws SQLException {
        for (Connection writer : writers) {
            writer.rollback();
            writer.close();
        }
        reader.close();
    }

    @Test
    void whoBeganFirstButCommitsLastComesLast() throws SQLException {
        long early = publish(0);
        long late = publish(1);
        pull();
        assertThat(pulled).as("nothing is committed").isEmpty();
        writers.get(1).commit();
        pull();
        writers.get(0).commit();
        pull();
        assertThat(pulled).containsExactly(late, early);
    }

    @Test
    void aTransactionThatFailsLeavesNoGap() throws SQLException {
        long before = newest();
        publish(0);
        writers.get(0).rollback();
        long kept = publish(1);
        writers.get(1).commit();
        pull();
        assertThat(pulled).containsExactly(kept);
        assertThat(cursor).isEqualTo(before + 1);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void inAnyInterleavingNothingIsMissedOrDoubled(long seed) throws SQLException {
        Random random = new Random(seed);
        List<Long> committed = new ArrayList<>();
        List<List<Long>> open = new ArrayList<>();
        for (int i = 0; i < WRITERS; i++) open.add(new ArrayList<>());
        for (int step = 0; step < 80; step++) {
            int writer = random.nextInt(WRITERS);
            switch (random.nextInt(4)) {
                case 0 -> pull();
                case 1 -> {
                    writers.get(writer).rollback();
                    open.get(writer).clear();
                }
                case 2 -> {
                    writers.get(writer).commit();
                    committed.addAll(open.get(writer));
                    open.get(writer).clear();
                }
                default -> open.get(writer).add(publish(writer));
            }
        }
        pull();
        assertThat(pulled).containsExactlyElementsOf(committed);
    }

    private void pull() throws SQLException {
        try (Statement sql = reader.createStatement();
                ResultSet rows = sql.executeQuery(
                        "select seq, run_id from stook.publication_order where seq > " + cursor + " order by seq")) {
            while (rows.next()) {
                assertThat(rows.getLong(1)).as("no gap").isEqualTo(cursor + 1);
                cursor = rows.getLong(1);
                pulled.add(rows.getLong(2));
            }
        }
    }

    private long newest() throws SQLException {
        return number(reader, "select coalesce(max(seq), 0) from stook.publication_order");
    }

    /** A run that goes all the way to its publication, in the writer's open transaction. */
    private long publish(int writer) throws SQLException {
        Connection connection = writers.get(writer);
        long stack =
                number(connection, "insert into stook.stack (station_id, subject) values (1, 'fluorite') returning id");
        long run = number(
                connection,
                "insert into stook.run (stack_id, settings_id, created_by) values (" + stack + ", '" + HASH
                        + "', 'ada') returning id");
        try (Statement sql = connection.createStatement()) {
            sql.execute("update stook.run set state = 'RUNNING', attempt = 1 where id = " + run);
            sql.execute("insert into stook.attempt (run_id, n, engine_version) values (" + run + ", 1, '0.1.0')");
            sql.execute("update stook.run set state = 'PUBLISHING', result_sha256 = '" + HASH
                    + "', result_name = 'x' where id = " + run);
            sql.execute("update stook.run set state = 'PUBLISHED' where id = " + run);
            sql.execute(
                    "insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes, engine_version)"
                            + " values (" + run + ", 1, " + stack + ", 1, 'run" + run + ".tif', '" + HASH
                            + "', 9, '0.1.0')");
        }
        return run;
    }

    private static long number(Connection connection, String query) throws SQLException {
        try (Statement sql = connection.createStatement();
                ResultSet row = sql.executeQuery(query)) {
            row.next();
            return row.getLong(1);
        }
    }
}
