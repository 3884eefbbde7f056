package org.stook.migrations;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.postgres.testing.TestDatabase;

class SchemaTest {
    private static final TestDatabase DATABASE = TestDatabase.fresh(SchemaTest.class);
    private static JdbcClient jdbc;

    @BeforeAll
    static void migrate() {
        jdbc = JdbcClient.create(DATABASE.dataSource());
        assertThat(Schema.migrate(DATABASE.dataSource())).isPositive();
    }

    @Test
    void aSecondMigrationFindsNothingToDo() {
        assertThat(Schema.migrate(DATABASE.dataSource())).isZero();
        assertThat(Schema.flyway(DATABASE.dataSource()).info().current().getVersion())
                .hasToString(String.valueOf(Schema.NEWEST));
    }

    @Test
    void everyTableOfOursSaysWhatItIsFor() {
        List<String> silent = jdbc.sql("""
                        select c.relname from pg_class c
                        where c.relnamespace in ('stook'::regnamespace, 'jobs'::regnamespace) and c.relkind = 'r'
                          and c.relname <> 'flyway_schema_history' and obj_description(c.oid, 'pg_class') is null""").query(String.class).list();
        assertThat(silent).isEmpty();
    }

    /** Outside check: schema-postgresql.sql inside spring-batch-core names these columns. */
    @Test
    void batchTablesAreThoseOfTheLibrary() throws IOException {
        List<String> statements;
        try (InputStream in = getClass().getResourceAsStream("/org/springframework/batch/core/schema-postgresql.sql")) {
            statements = Arrays.stream(new String(in.readAllBytes(), StandardCharsets.UTF_8).split(";"))
                    .filter(s -> !s.isBlank())
                    .toList();
        }
        jdbc.sql("create schema yardstick").update();
        jdbc.sql("set search_path = yardstick; " + String.join(";", statements)).update();
        assertThat(columnsOf("batch")).isNotEmpty().isEqualTo(columnsOf("yardstick"));
        assertThat(sequencesOf("batch")).hasSize(3).isEqualTo(sequencesOf("yardstick"));
    }

    private static List<String> columnsOf(String schema) {
        return jdbc.sql("""
                        select concat_ws(' ', table_name, column_name, data_type, character_maximum_length, is_nullable)
                        from information_schema.columns where table_schema = :schema
                        order by table_name, ordinal_position""").param("schema", schema).query(String.class).list();
    }

    private static List<String> sequencesOf(String schema) {
        return jdbc.sql("""
                        select concat_ws(' ', sequence_name, maximum_value, cycle_option)
                        from information_schema.sequences where sequence_schema = :schema order by 1""").param("schema", schema).query(String.class).list();
    }
}
