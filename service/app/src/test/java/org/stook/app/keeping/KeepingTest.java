package org.stook.app.keeping;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;
import org.springframework.util.unit.DataSize;
import org.stook.app.testing.Migrated;
import org.stook.orders.WorkOrder;
import tools.jackson.databind.json.JsonMapper;

class KeepingTest {
    private static final String HASH = "cd".repeat(32);
    private static final String SENTINEL = "7d444840-9dc0-11d1-b245-5ffdce74fad2";

    private static DataSource source;
    private static JdbcClient jdbc;

    @TempDir
    private Path wall;

    private long now = 1_000_000_000_000L;
    private Fixity fixity;
    private Retention retention;

    @BeforeAll
    static void prepare() {
        source = Migrated.database(KeepingTest.class).dataSource();
        jdbc = JdbcClient.create(source);
    }

    /** Two publications of one stack: run 1 superseded five days ago, run 2 stands. */
    @BeforeEach
    void publish() throws IOException {
        force("truncate stook.audit_entry, stook.audit_open, stook.share, stook.tone_settings, stook.retention_policy,"
                + " stook.removal, stook.fixity, stook.share_room restart identity cascade");
        Files.writeString(wall.resolve(WorkOrder.Share.SENTINEL), SENTINEL + "\n");
        force("insert into stook.share (name, kind, root, sentinel) values ('wall', 'PUBLISH', '" + wall + "', '"
                + SENTINEL
                + "'); insert into stook.station (name, intake_share_id, intake_folder) values ('north', 1, 'north');"
                + " insert into stook.tone_settings (id, body) values ('" + HASH + "', '{}');"
                + " insert into stook.stack (station_id, subject, state, manifest_sha256) values (1, 'Fluorite 7', 'SEALED', '"
                + HASH + "')");
        for (int run = 1; run <= 2; run++) publish(run);
        force("update stook.run set state = 'SUPERSEDED', changed_at = now() - interval '5 days' where id = 1");
        TransactionTemplate transaction = new TransactionTemplate(new DataSourceTransactionManager(source));
        PublishedFiles files = new PublishedFiles(jdbc, JsonMapper.builder().build());
        KeepingSettings settings = new KeepingSettings(Duration.ofDays(90), DataSize.ofBytes(10));
        fixity = new Fixity(
                jdbc, files, settings, () -> now, JsonMapper.builder().build());
        retention = new Retention(jdbc, transaction, files);
    }

    private void publish(int run) throws IOException {
        Path master = Files.writeString(wall.resolve(run + ".tif"), "pixels of " + run);
        Path tiles = Files.createDirectories(wall.resolve(run + ".tiles/0")).resolveSibling("info.json");
        Files.writeString(tiles, "{}");
        force(
                "insert into stook.run (stack_id, settings_id, state, attempt, result_sha256, result_name, created_by) values (1, '"
                        + HASH + "', 'PUBLISHED', 1, '" + HASH + "', 'x', 'ada');"
                        + " insert into stook.attempt (run_id, n, engine_version) values (" + run + ", 1, '0');"
                        + " insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes, engine_version, files)"
                        + " values (" + run + ", 1, 1, 1, '" + run + ".tif', '" + Fixity.hash(master)
                        + "', 11, '0', '[{\"name\": \"" + run
                        + ".tiles/info.json\", \"kind\": \"tiles\", \"sha256\": \"" + Fixity.hash(tiles) + "\"}]');"
                        + " insert into stook.fixity (run_id) values (" + run + ")");
    }

    /** With every trigger off. */
    private static void force(String sql) {
        jdbc.sql("set session_replication_role = replica; " + sql).update();
    }

    private static String value(String sql) {
        return String.valueOf(jdbc.sql(sql).query().singleValue());
    }

    @Test
    void filesAreCheckedAtABoundedRate() {
        fixity.step();
        assertThat(fixity.progress().checked())
                .as("13 bytes, then wait at 10 a second")
                .isEqualTo(1);
        fixity.step();
        assertThat(fixity.progress().checked()).isEqualTo(1);
        now += 1_300_000_000L;
        fixity.step();
        assertThat(fixity.progress()).isEqualTo(new Fixity.Progress(2, 2, 0, 0));
        assertThat(value("select bool_and(due_at > now() + interval '89 days') from stook.fixity"))
                .isEqualTo("true");
    }

    @Test
    void aDamagedAndAMissingFileAreNamedAndOnRecord() throws IOException {
        Files.writeString(wall.resolve("1.tif"), "other bytes");
        Files.delete(wall.resolve("1.tiles/info.json"));
        fixity.step();
        assertThat(fixity.damaged(10)).singleElement().satisfies(damage -> {
            assertThat(damage.subject()).isEqualTo("Fluorite 7");
            assertThat(damage.files())
                    .hasSize(2)
                    .anySatisfy(
                            file -> assertThat(file).contains("1.tif: found ").contains(", expected "))
                    .anySatisfy(file -> assertThat(file).contains("info.json: found nothing, expected "));
        });
        assertThat(value("select kind || ' ' || subject from stook.audit_entry"))
                .isEqualTo("publication.DAMAGED publication/1");
        assertThat(value("select due_at < now() + interval '2 days' from stook.fixity where run_id = 1"))
                .as("looked at again tomorrow")
                .isEqualTo("true");
    }

    @Test
    void aShareThatIsNotMountedIsNoDamage() throws IOException {
        Files.delete(wall.resolve(WorkOrder.Share.SENTINEL));
        fixity.step();
        assertThat(fixity.progress().checked()).isZero();
    }

    @Test
    void nothingIsRemovedWithoutAPolicy() {
        retention.step();
        assertThat(retention.announced(10)).isEmpty();
        retention.decide("north", new Retention.Policy(null, 7, "keep all"), "ada");
        retention.step();
        assertThat(retention.announced(10)).isEmpty();
        assertThat(retention.decide("nowhere", new Retention.Policy(1, 7, null), "ada"))
                .isFalse();
    }

    @Test
    void aSupersededPublicationIsAnnouncedAndRemovedAfterItsGraceOnly() {
        retention.decide("north", new Retention.Policy(3, 7, null), "ada");
        retention.step();
        assertThat(retention.announced(10))
                .extracting(Retention.Announced::runId)
                .containsExactly(1L);
        assertThatThrownBy(() ->
                        jdbc.sql("update stook.removal set state = 'REMOVED'").update())
                .hasMessageContaining("may not go from ANNOUNCED to REMOVED");
        retention.step();
        assertThat(wall.resolve("1.tif")).exists();
        force("update stook.removal set due_at = now() - interval '1 minute'");
        retention.step();
        assertThat(wall.resolve("1.tif")).doesNotExist();
        assertThat(wall.resolve("1.tiles")).doesNotExist();
        assertThat(wall.resolve("2.tif")).exists();
        assertThat(
                        value(
                                "select string_agg(actor || ' ' || kind || ' ' || subject, ', ' order by id) from stook.audit_entry"))
                .isEqualTo(
                        "ada station.RETENTION-1 station/1, retention policy publication.REMOVAL-ANNOUNCED publication/1,"
                                + " retention policy publication.REMOVAL-REMOVED publication/1");
    }

    @Test
    void aRemovalCanBeCalledOffByAPersonOrAnotherPolicy() {
        retention.decide("north", new Retention.Policy(3, 7, null), "ada");
        retention.step();
        force("update stook.removal set due_at = now() - interval '1 minute'");
        retention.decide("north", new Retention.Policy(null, 7, "stop"), "ada");
        retention.step();
        assertThat(wall.resolve("1.tif")).exists();
        retention.decide("north", new Retention.Policy(3, 7, null), "ada");
        assertThat(retention.keep(1, "ada")).isTrue();
        assertThat(retention.keep(1, "ada")).isFalse();
        retention.step();
        assertThat(wall.resolve("1.tif")).exists();
    }

    @Test
    void aFileThatIsNotWhatWasPublishedIsLeft() throws IOException {
        Files.writeString(wall.resolve("1.tif"), "somebody's own");
        retention.decide("north", new Retention.Policy(0, 1, null), "ada");
        retention.step();
        force("update stook.removal set due_at = now() - interval '1 minute'");
        retention.step();
        assertThat(wall.resolve("1.tif")).hasContent("somebody's own");
        assertThat(wall.resolve("1.tiles")).doesNotExist();
    }

    @Test
    void aShareIsFullWhereTheLineThroughItsRoomEnds() {
        List<Forecast.Sample> samples = new ArrayList<>();
        Instant start = Instant.parse("2026-03-02T09:00:00Z");
        for (int day = 0; day <= 10; day++)
            samples.add(new Forecast.Sample(start.plus(day, ChronoUnit.DAYS), 1000 - 20L * day));
        Forecast.Outlook outlook = Forecast.outlook("wall", samples, 5000);
        assertThat(outlook.perDay()).isEqualTo(20);
        assertThat(outlook.fullAt()).isCloseTo(start.plus(50, ChronoUnit.DAYS), within(1, ChronoUnit.MINUTES));
        assertThat(Forecast.outlook("wall", samples.subList(0, 2), 5000).perDay())
                .isNull();
        List<Forecast.Sample> growing =
                List.of(samples.get(10), new Forecast.Sample(start.plus(20, ChronoUnit.DAYS), 1000));
        assertThat(Forecast.outlook("wall", growing, 5000).fullAt()).isNull();
    }

    @Test
    void roomIsMeasuredOnSharesThatAreThere() throws IOException {
        Forecast forecast = new Forecast(jdbc);
        forecast.step();
        assertThat(forecast.outlooks())
                .singleElement()
                .satisfies(outlook -> assertThat(outlook.totalBytes()).isPositive());
        Files.delete(wall.resolve(WorkOrder.Share.SENTINEL));
        forecast.step();
        assertThat(value("select count(*) from stook.share_room")).isEqualTo("1");
    }
}
