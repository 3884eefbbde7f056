package org.stook.migrations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.transaction.support.TransactionTemplate;
import org.stook.postgres.testing.TestDatabase;

/** Every pair of states of every machine: the legal ones pass and leave one audit entry, all others are refused. */
class TransitionsTest {
    private static final String HASH = "ab".repeat(32);
    private static final List<String> FRAME = List.of("SEEN", "STABLE", "ACCEPTED", "INCOMPLETE", "REJECTED", "STRAY");
    private static final List<String> STACK = List.of("COLLECTING", "SEALED", "ASIDE");
    private static final List<String> RUN = List.of(
            "READY", "HELD", "RUNNING", "PUBLISHING", "PUBLISHED", "SUPERSEDED", "FAILED", "QUARANTINED", "CANCELLED");

    private static JdbcClient jdbc;
    private static JdbcTemplate template;
    private static TransactionTemplate transaction;
    private long audited;

    @BeforeAll
    static void prepare() {
        TestDatabase database = TestDatabase.filled(TransitionsTest.class, Schema::migrate);
        var source = new SingleConnectionDataSource(database.url(), database.username(), database.password(), true);
        template = new JdbcTemplate(source);
        jdbc = JdbcClient.create(template);
        transaction = new TransactionTemplate(new DataSourceTransactionManager(source));
        run("insert into stook.share (name, kind, root) values ('card', 'INTAKE', '/in')");
        run("insert into stook.station (name, intake_share_id, intake_folder) values ('north', 1, 'north')");
        run("insert into stook.frame (sha256, bytes, format, width, height, bits) values ('" + HASH
                + "', 9, 'tiff', 3, 2, 16)");
        run("insert into stook.tone_settings (id, body) values ('" + HASH + "', '{}')");
        run("insert into stook.stack (station_id, subject) values (1, 'fluorite')");
        run("insert into stook.intake_file (share_id, rel_path, size_bytes, mtime_ns) values (1, 'a.tif', 9, 1)");
        run("insert into stook.run (stack_id, settings_id, created_by) values (1, '" + HASH + "', 'ada')");
    }

    @BeforeEach
    void count() {
        audited = entries();
    }

    static Stream<Arguments> pairs() {
        return Stream.of(Map.entry("frame", FRAME), Map.entry("stack", STACK), Map.entry("run", RUN))
                .flatMap(machine -> machine.getValue().stream()
                        .flatMap(from -> machine.getValue().stream()
                                .filter(to -> !from.equals(to))
                                .map(to -> Arguments.of(machine.getKey(), from, to))));
    }

    @ParameterizedTest(name = "{0}: {1} to {2}")
    @MethodSource("pairs")
    void aChangeOfStateIsLegalAndRecordedOrRefused(String machine, String from, String to) {
        int legal = jdbc.sql(
                        "select count(*) from stook." + machine + "_transition where from_state = ? and to_state = ?")
                .params(from, to)
                .query(Integer.class)
                .single();
        place(machine, from);
        if (legal == 1) {
            transaction.executeWithoutResult(t -> {
                run("select set_config('stook.actor', 'ada', true)");
                move(machine, from, to);
            });
            assertThat(newEntries()).containsExactly("ada " + machine + "." + from + "-" + to + " " + machine + "/1");
        } else {
            assertThatThrownBy(() -> move(machine, from, to))
                    .hasMessageContaining("may not go from " + from + " to " + to);
            assertThat(newEntries()).isEmpty();
        }
    }

    @Test
    void takingOverAPublicationRaisesTheFenceAndIsRecorded() {
        place("run", "PUBLISHING");
        run("update stook.run set attempt = attempt + 1");
        assertThat(newEntries()).singleElement().asString().contains("run.PUBLISHING-PUBLISHING");
    }

    @Test
    void theFenceMovesWithAClaimOnlyAndByOne() {
        place("run", "READY");
        assertThatThrownBy(() -> run("update stook.run set attempt = attempt + 1"))
                .hasMessageContaining("may not go from READY to READY");
        assertThatThrownBy(() -> run("update stook.run set state = 'RUNNING'")).hasMessageContaining("with attempt");
        assertThatThrownBy(() -> run("update stook.run set state = 'RUNNING', attempt = attempt + 2"))
                .hasMessageContaining("with attempt");
        place("run", "RUNNING");
        assertThatThrownBy(() -> run("update stook.run set attempt = attempt + 1"))
                .hasMessageContaining("may not go from RUNNING to RUNNING");
    }

    @Test
    void aChangeThatIsNoTransitionIsNotRecorded() {
        place("run", "RUNNING");
        run("update stook.run set stage = 'blend', fraction = 0.5");
        assertThat(newEntries()).isEmpty();
    }

    @Test
    void aRolledBackTransitionLeavesNoEntry() {
        place("run", "READY");
        transaction.executeWithoutResult(t -> {
            move("run", "READY", "HELD");
            t.setRollbackOnly();
        });
        assertThat(newEntries()).isEmpty();
    }

    @Test
    void withoutANamedActorTheDatabaseRoleIsRecorded() {
        place("run", "READY");
        move("run", "READY", "HELD");
        assertThat(newEntries()).singleElement().asString().startsWith("database:");
    }

    @Test
    void nothingIsBornInALaterState() {
        assertThatThrownBy(() -> run("insert into stook.run (stack_id, settings_id, created_by, state) values (1, '"
                        + HASH + "', 'ada', 'RUNNING')"))
                .hasMessageContaining("a new run may not go from nowhere to RUNNING");
        assertThatThrownBy(() -> run("insert into stook.stack (station_id, subject, state) values (1, 'x', 'ASIDE')"))
                .hasMessageContaining("a new stack may not");
    }

    private static void move(String machine, String from, String to) {
        if (machine.equals("run")) {
            jdbc.sql(
                            "update stook.run set state = ?, attempt = attempt + coalesce("
                                    + "(select attempt_step from stook.run_transition where from_state = ? and to_state = ?), 0)")
                    .params(to, from, to)
                    .update();
        } else {
            run("update " + table(machine) + " set state = '" + to + "'");
        }
    }

    /** Puts the machine's row in a state without the guards: the test is about what happens from there. */
    private static void place(String machine, String state) {
        String filled = switch (machine) {
            case "frame" -> ", sha256 = '" + HASH + "', reason = 'why'";
            case "stack" -> ", manifest_sha256 = '" + HASH + "'";
            default -> ", result_sha256 = '" + HASH + "', result_name = 'r.tif'";
        };
        run("set session_replication_role = replica");
        run("update " + table(machine) + " set state = '" + state + "'" + filled);
        run("set session_replication_role = origin");
    }

    private static String table(String machine) {
        return "stook." + (machine.equals("frame") ? "intake_file" : machine);
    }

    private List<String> newEntries() {
        return jdbc.sql("select concat_ws(' ', actor, kind, subject) from stook.audit_entry where id > ? order by id")
                .param(audited)
                .query(String.class)
                .list();
    }

    private static long entries() {
        return jdbc.sql("select coalesce(max(id), 0) from stook.audit_entry")
                .query(Long.class)
                .single();
    }

    private static void run(String sql) {
        template.execute(sql);
    }
}
