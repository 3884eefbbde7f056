package org.stook.migrations;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.jdbc.core.JdbcTemplate;
import org.stook.postgres.testing.TestDatabase;

class AppendOnlyTest {
    private static final String HASH = "cd".repeat(32);
    private static JdbcTemplate jdbc;

    @BeforeAll
    static void prepare() {
        TestDatabase database = TestDatabase.filled(AppendOnlyTest.class, Schema::migrate);
        jdbc = new JdbcTemplate(database.dataSource());
        jdbc.execute("select stook.write_audit('sign-in', 'person/ada')");
        jdbc.execute("insert into stook.audit_leaf values (0, 1, decode('" + HASH + "', 'hex'))");
        jdbc.execute("insert into stook.share (name, kind, root) values ('card', 'INTAKE', '/in')");
        jdbc.execute("insert into stook.station (name, intake_share_id, intake_folder) values ('north', 1, 'north')");
        jdbc.execute("insert into stook.frame (sha256, bytes, format, width, height, bits) values ('" + HASH
                + "', 9, 'tiff', 3, 2, 16)");
        jdbc.execute("insert into stook.stack (station_id, subject) values (1, 'ammonite')");
        jdbc.execute("insert into stook.stack_frame (stack_id, ordinal, sha256, share_id, rel_path) values (1, 0, '"
                + HASH + "', 1, 'a.tif')");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update stook.audit_entry set actor = 'eve'",
                "delete from stook.audit_entry",
                "truncate stook.audit_entry",
                "update stook.audit_leaf set entry_id = 2",
                "delete from stook.audit_leaf",
                "truncate stook.audit_node",
                "truncate stook.audit_token",
                "truncate stook.publication cascade",
                "truncate stook.tone_settings cascade"
            })
    void whatIsRecordedStays(String sql) {
        assertThatThrownBy(() -> jdbc.execute(sql)).hasMessageContaining("refused: its rows are never changed");
        assertThat(jdbc.queryForObject("select actor from stook.audit_entry where id = 1", String.class))
                .startsWith("database:");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update stook.audit_entry set actor = 'eve'",
                "delete from stook.audit_leaf",
                "truncate stook.audit_entry",
                "update stook.publication set name = 'other'",
                "insert into stook.run_transition values ('READY', 'PUBLISHED', 0, 'quick')",
                "alter table stook.audit_entry disable trigger all",
                "set session_replication_role = replica",
                "drop table stook.audit_seal cascade"
            })
    void theRoleThatWorksIsRefusedBeforeAnyTrigger(String sql) {
        assertThatThrownBy(() -> asWorker(sql))
                .rootCause()
                .hasMessageMatching("(?s).*(permission denied|must be owner).*");
    }

    @Test
    void theRoleThatWorksMayAddAndRead() {
        long before = entries();
        asWorker("select stook.write_audit('sign-in', 'person/ada')");
        asWorker("update stook.share set state_text = 'seen' where id = 1");
        assertThat(entries()).isEqualTo(before + 1);
        assertThat(jdbc.queryForObject("select count(*) from stook.audit_open", Long.class))
                .isEqualTo(entries());
    }

    private static long entries() {
        return java.util.Objects.requireNonNull(
                jdbc.queryForObject("select count(*) from stook.audit_entry", Long.class));
    }

    private static void asWorker(String sql) {
        jdbc.execute("begin; set local role stook_rw; " + sql + "; commit");
    }

    @Test
    void theFramesOfASealedStackAreFixed() {
        jdbc.execute("update stook.stack set state = 'SEALED', manifest_sha256 = '" + HASH + "' where id = 1");
        assertThatThrownBy(() -> jdbc.execute("delete from stook.stack_frame"))
                .hasMessageContaining("stack 1 is sealed");
        assertThatThrownBy(() -> jdbc.execute("update stook.stack_frame set role = 'SLATE'"))
                .hasMessageContaining("stack 1 is sealed");
    }
}
