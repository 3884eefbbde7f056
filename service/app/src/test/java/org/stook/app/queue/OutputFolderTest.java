package org.stook.app.queue;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.app.audit.AuditTrail;
import org.stook.app.testing.Migrated;
import org.stook.orders.WorkOrder;
import org.stook.postgres.testing.TestDatabase;

/** The folder that composites go to: what is left there by lost attempts, and whether there is room. */
class OutputFolderTest {
    private static final String HASH = "ab".repeat(32);
    private static JdbcClient jdbc;

    @TempDir
    private Path wall;

    @BeforeAll
    static void migrate() {
        TestDatabase database = Migrated.database(OutputFolderTest.class);
        jdbc = JdbcClient.create(database.dataSource());
        sql("insert into stook.share (name, kind, root) values ('card', 'INTAKE', '/in'), ('wall', 'PUBLISH', '/out')");
        sql("insert into stook.tone_settings (id, body) values ('" + HASH + "', '{}')");
        sql("insert into stook.station (name, intake_share_id, intake_folder, publish_share_id, publish_folder)"
                + " values ('north', 1, 'north', 2, 'done')");
    }

    @BeforeEach
    void mount() throws IOException {
        sql("update stook.share set state = 'OK', root = '" + wall + "' where name = 'wall'");
        Files.writeString(
                wall.resolve(WorkOrder.Share.SENTINEL),
                jdbc.sql("select sentinel::text from stook.share where name = 'wall'")
                        .query(String.class)
                        .single());
    }

    @Test
    void stagedFilesOfLostAttemptsAreDeletedAndThoseStillNeededStay() throws IOException {
        long over = run("RUNNING", "READY");
        long running = run("RUNNING");
        long publishing = run("RUNNING", "PUBLISHING");
        long fresh = run("RUNNING", "READY");
        sql("update stook.run set changed_at = now() - interval '2 hours' where id <> " + fresh);
        for (long run : new long[] {over, running, publishing, fresh}) {
            staged(run + ".1.part");
            staged(run + ".1.part.json");
        }
        staged(over + ".1.part.tiles/0/0_0.jpg");
        staged("notes.txt");
        janitor().step();
        assertThat(wall.resolve("done/.staging").toFile().list())
                .containsExactlyInAnyOrder(
                        running + ".1.part",
                        running + ".1.part.json",
                        publishing + ".1.part",
                        publishing + ".1.part.json",
                        fresh + ".1.part",
                        fresh + ".1.part.json",
                        "notes.txt");
    }

    @Test
    void placedFilesThatNeverBecameOfficialAreSetAsideAndNothingElseIsTouched() throws IOException {
        long failed = run("RUNNING", "PUBLISHING", "FAILED");
        long publishing = run("RUNNING", "PUBLISHING");
        long published = run("RUNNING", "PUBLISHING", "PUBLISHED");
        sql("insert into stook.attempt (run_id, n, engine_version) values (" + published + ", 1, '1')");
        sql("insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes, engine_version)"
                + " select id, 1, stack_id, 2, result_name, result_sha256, 9, '1' from stook.run where id = "
                + published);
        sql("update stook.run set changed_at = now() - interval '2 hours'");
        for (long run : new long[] {failed, publishing, published}) {
            placed(run + "-abab.tif");
            placed(run + "-abab.preview.jpg");
        }
        placed("of-somebody-else.tif");
        janitor().step();
        janitor().step();
        assertThat(wall.resolve("done/Beryl").toFile().list())
                .containsExactlyInAnyOrder(
                        publishing + "-abab.tif",
                        publishing + "-abab.preview.jpg",
                        published + "-abab.tif",
                        published + "-abab.preview.jpg",
                        "of-somebody-else.tif");
        assertThat(wall.resolve(".orphans/done/Beryl").toFile().list())
                .containsExactlyInAnyOrder(failed + "-abab.tif", failed + "-abab.preview.jpg");
        assertThat(value("select count(*) from stook.audit_entry where kind = 'share.ORPHAN'"))
                .isEqualTo("2");
    }

    @Test
    void onAShareThatIsNotThereNothingIsTouched() throws IOException {
        long over = run("RUNNING", "READY");
        sql("update stook.run set changed_at = now() - interval '2 hours'");
        staged(over + ".1.part");
        Files.delete(wall.resolve(WorkOrder.Share.SENTINEL));
        janitor().step();
        assertThat(wall.resolve("done/.staging/" + over + ".1.part")).exists();
    }

    @Test
    void aFullShareIsMarkedUntilThereIsRoomAgain() {
        new ShareRoom(jdbc, Long.MAX_VALUE).step();
        assertThat(value("select state || ': ' || state_text from stook.share where name = 'wall'"))
                .startsWith("FULL: ")
                .endsWith("8796093022207 are wanted; runs wait until there is room");
        new ShareRoom(jdbc, 1).step();
        assertThat(value("select state || coalesce(state_text, '') from stook.share where name = 'wall'"))
                .isEqualTo("OK");
    }

    @Test
    void aFullShareThatVanishesIsGoneAndOneThatIsGoneIsLeftToTheIntake() throws IOException {
        new ShareRoom(jdbc, Long.MAX_VALUE).step();
        Files.delete(wall.resolve(WorkOrder.Share.SENTINEL));
        new ShareRoom(jdbc, 1).step();
        assertThat(value("select state from stook.share where name = 'wall'")).isEqualTo("GONE");
        mountAgain();
        new ShareRoom(jdbc, 1).step();
        assertThat(value("select state from stook.share where name = 'wall'")).isEqualTo("GONE");
    }

    private void mountAgain() throws IOException {
        Files.writeString(
                wall.resolve(WorkOrder.Share.SENTINEL), value("select sentinel from stook.share where name = 'wall'"));
    }

    private static Janitor janitor() {
        return new Janitor(jdbc, new AuditTrail(jdbc));
    }

    /** A run that was claimed once and went these ways. */
    private static long run(String... states) {
        long stack =
                Long.parseLong(value("insert into stook.stack (station_id, subject) values (1, 'Beryl') returning id"));
        sql("update stook.stack set state = 'SEALED', manifest_sha256 = lpad(to_hex(id), 64, '0') where id = " + stack);
        long run = Long.parseLong(value("insert into stook.run (stack_id, settings_id, created_by) values (" + stack
                + ", '" + HASH + "', 'ada') returning id"));
        for (String state : states) {
            sql(
                    "update stook.run set state = '%s', attempt = 1, result_sha256 = '%s', staged_name = 'done/.staging/' || id || '.1.part', result_name = 'done/Beryl/' || id || '-abab.tif' where id = %d"
                            .formatted(state, HASH, run));
        }
        return run;
    }

    private void staged(String name) throws IOException {
        file("done/.staging/" + name);
    }

    private void placed(String name) throws IOException {
        file("done/Beryl/" + name);
    }

    private void file(String name) throws IOException {
        Path file = wall.resolve(name);
        Files.createDirectories(file.getParent());
        Files.writeString(file, "pixels");
    }

    private static void sql(String statement) {
        jdbc.sql(statement).update();
    }

    private static String value(String sql) {
        return String.valueOf(jdbc.sql(sql).query().singleValue());
    }
}
