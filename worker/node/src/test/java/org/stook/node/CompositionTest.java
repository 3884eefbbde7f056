package org.stook.node;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.context.ConfigurableApplicationContext;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.imaging.composite.ComposeReport;
import org.stook.node.job.CompositionWork;
import org.stook.node.publish.Durable;
import org.stook.orders.RunId;
import org.stook.orders.WorkOrder;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.RunTask;
import org.stook.orders.attempt.StagedResult;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** A node's own beans on a real database and real files; the queue is turned by hand. */
class CompositionTest {
    private static final String STEPS =
            "select string_agg(s.step_name || ' ' || s.status, ', ' order by s.step_execution_id)"
                    + " from stook.attempt a join batch.batch_step_execution s"
                    + " on s.job_execution_id = a.batch_execution_id where a.run_id = ";

    @TempDir
    private static Path folder;

    private static Workplace place;
    private static ConfigurableApplicationContext node;

    @BeforeAll
    static void open() throws IOException {
        place = new Workplace(CompositionTest.class, folder);
        node = place.node("w1");
    }

    @AfterAll
    static void close() {
        node.close();
        assertThat(place.value("select state from stook.worker where id = 'w1'"))
                .isEqualTo("GONE");
        place.source.close();
    }

    @Test
    void aRunIsPublishedWithItsFilesAndRecords() throws IOException {
        RunId run = place.run();
        work(run);
        assertThat(place.trail(run))
                .containsExactly(
                        "run.CREATED", "run.READY-RUNNING", "run.RUNNING-PUBLISHING", "run.PUBLISHING-PUBLISHED");
        String name = place.value("select name from stook.publication where run_id = " + run);
        String hash = place.value("select sha256 from stook.publication where run_id = " + run);
        assertThat(name).isEqualTo("done/Fluorite-7/" + run + "-" + hash.substring(0, 16) + ".tif");
        assertThat(Durable.sha256(place.wall.resolve(name))).isEqualTo(hash);
        assertThat(place.value("select bytes from stook.publication where run_id = " + run))
                .isEqualTo("" + Files.size(place.wall.resolve(name)));
        assertThat(place.published())
                .contains(name, name.replace(".tif", ".json"), name.replace(".tif", ".preview.jpg"))
                .contains(name.replace(".tif", ".review/source.png"), name.replace(".tif", ".review/frames/002.jpg"))
                .noneMatch(f -> f.contains(".staging/" + run + "."));
        assertThat(place.value("select string_agg(f->>'kind', ' ') from stook.publication,"
                        + " jsonb_array_elements(files) f where run_id = " + run))
                .isEqualTo("tiles review thumbnail preview derivative source-map depth-map record");
        assertThat(place.value("select verdict || (score->>'verdict') from stook.run where id = " + run))
                .isIn("ACCEPTACCEPT", "LOOKLOOK", "RESHOOTRESHOOT");
    }

    /** Judged by a general-purpose validator (networknt) against the schema we publish. */
    @Test
    void theRecordKeepsToItsSchemaAndNamesEveryFileByItsHash() throws IOException {
        RunId run = place.run();
        work(run);
        String name = place.value("select name from stook.publication where run_id = " + run);
        Path record = place.wall.resolve(name.replace(".tif", ".json"));
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(ComposeReport.class.getResourceAsStream("report-1.schema.json"), InputFormat.JSON);
        assertThat(schema.validate(Files.readString(record), InputFormat.JSON)).isEmpty();
        JsonNode publication = JsonMapper.shared().readTree(record.toFile()).path("publication");
        assertThat(publication.path("files")).hasSize(8).allSatisfy(file -> {
            Path there = record.resolveSibling(file.path("name").stringValue());
            assertThat(Durable.sha256(there)).isEqualTo(file.path("sha256").stringValue());
            assertThat(there.getFileName().toString()).matches("[A-Za-z0-9._-]+");
        });
        assertThat(publication.path("frames")).hasSize(5);
    }

    @Test
    void aNodesLoginCannotChangeTheTrail() {
        JdbcClient own = JdbcClient.create(node.getBean(DataSource.class));
        for (String sql : List.of(
                "update stook.audit_entry set actor = 'eve'",
                "delete from stook.audit_entry",
                "truncate stook.audit_entry",
                "update stook.publication set name = 'other'")) {
            assertThatThrownBy(() -> own.sql(sql).update()).hasStackTraceContaining("permission denied");
        }
    }

    @Test
    void masterAndJpegSayWhatTheyAre() throws IOException {
        RunId run = place.run();
        work(run);
        Path master = place.wall.resolve(place.value("select name from stook.publication where run_id = " + run));
        Path jpeg = master.resolveSibling(master.getFileName().toString().replace(".tif", ".jpg"));
        for (Path file : List.of(master, jpeg)) {
            assertThat(Files.readString(file, StandardCharsets.ISO_8859_1))
                    .contains("digitalsourcetype/computationalCapture", "Fluorite 7", "2026:03:02 09:00:");
        }
    }

    @Test
    void theStepsOfAnAttemptAreOnRecord() throws IOException {
        RunId run = place.run();
        work(run);
        assertThat(place.value(STEPS + run))
                .isEqualTo("survey COMPLETED, register COMPLETED, blend COMPLETED, finish COMPLETED, score COMPLETED,"
                        + " publish COMPLETED");
    }

    @Test
    void aFrameThatChangedSinceIntakeFailsTheRunAndIsNamed() throws IOException {
        RunId run = place.run();
        Files.writeString(place.frame(place.stackOf(run), 2), "something else");
        work(run);
        assertThat(place.value("select state || ' ' || reason_code from stook.run where id = " + run))
                .isEqualTo("FAILED FRAME_CHANGED");
        assertThat(place.value("select reason_text from stook.run where id = " + run))
                .contains("HC_0003.jpg: frame changed since intake");
    }

    @Test
    void anUnreadableFrameIsSetAsideAndTheRestPublished() throws IOException {
        RunId run = place.runWithAnUnreadableFrame();
        work(run);
        assertThat(place.state(run)).isEqualTo("PUBLISHED");
        String name = place.value("select name from stook.publication where run_id = " + run);
        assertThat(Files.readString(place.wall.resolve(name.replace(".tif", ".json"))))
                .containsPattern("\"file\" *: *\"HC_0002.jpg\"[^}]*\"role\" *: *\"stray\"");
    }

    @Test
    void anAttemptThatWasTakenOverPublishesNothing() throws IOException {
        RunId run = place.run();
        RunTask task = node.getBean(RunTask.class);
        CompositionWork work = node.getBean(CompositionWork.class);
        task.workOnce(run, late -> {
            task.workOnce(run, work);
            Outcome outcome = work.workOn(late);
            assertThat(outcome).isInstanceOf(Outcome.LeaseLost.class);
            return outcome;
        });
        assertThat(place.value("select attempt from stook.publication where run_id = " + run))
                .isEqualTo("2");
        assertThat(place.published().stream().filter(f -> f.matches(".*/" + run + "-[0-9a-f]{16}\\.tif")))
                .hasSize(1);
    }

    @Test
    void anOperatorsCancellationEndsTheAttempt() throws IOException {
        RunId run = place.run();
        node.getBean(RunTask.class).workOnce(run, attempt -> {
            place.jdbc
                    .sql("update stook.run set cancel_requested = true where id = " + run)
                    .update();
            return node.getBean(CompositionWork.class).workOn(attempt);
        });
        assertThat(place.state(run)).isEqualTo("CANCELLED");
        assertThat(place.value(STEPS + run)).as("stopped is not failed").isEqualTo("survey STOPPED");
    }

    @Test
    void aStagedResultThatIsGoneIsComputedAgain() throws IOException {
        RunId run = place.run();
        RunTask task = node.getBean(RunTask.class);
        String hash = "ef".repeat(32);
        task.workOnce(run, attempt -> {
            attempt.publishing(new StagedResult(
                    attempt.order().stagedName(), attempt.order().finalName(hash, ".tif"), hash));
            return new Outcome.HandedBack("DRAIN", "the worker was told to end", Duration.ZERO);
        });
        assertThat(place.state(run)).isEqualTo("PUBLISHING");
        work(run);
        assertThat(place.state(run)).isEqualTo("PUBLISHED");
        assertThat(place.value("select sha256 from stook.publication where run_id = " + run))
                .isNotEqualTo(hash);
    }

    @Test
    void onASchemaThatItDoesNotKnowAWorkerPauses() {
        Presence presence = node.getBean(Presence.class);
        place.jdbc
                .sql("insert into stook.flyway_schema_history (installed_rank, version, description, type, script,"
                        + " installed_by, execution_time, success)"
                        + " values (99, '99', 'later', 'SQL', 'V99', 'test', 1, true)")
                .update();
        presence.tick();
        assertThat(place.value("select state || ': ' || pause_reason from stook.worker where id = 'w1'"))
                .startsWith("PAUSED: the database has schema 99, this version works on ");
        place.jdbc
                .sql("delete from stook.flyway_schema_history where installed_rank = 99")
                .update();
        presence.tick();
        assertThat(place.value("select state from stook.worker where id = 'w1'"))
                .isEqualTo("ACTIVE");
    }

    @Test
    void withoutItsSentinelAShareIsNotTouched() throws IOException {
        RunId run = place.run();
        Path sentinel = place.wall.resolve(WorkOrder.Share.SENTINEL);
        String id = Files.readString(sentinel);
        Files.delete(sentinel);
        work(run);
        node.getBean(Presence.class).tick();
        assertThat(place.value("select state || ' ' || reason_code || failures from stook.run where id = " + run))
                .isEqualTo("READY SHARE_GONE0");
        assertThat(place.value("select state || ' ' || pause_reason from stook.worker where id = 'w1'"))
                .startsWith("PAUSED share wall is not mounted here");
        assertThat(sentinel).doesNotExist();
        Files.writeString(sentinel, id);
        node.getBean(Presence.class).tick();
        assertThat(place.value("select state from stook.worker where id = 'w1'"))
                .isEqualTo("ACTIVE");
    }

    @Test
    void aStackTooLargeForTheProcessIsHeldUnlessALargerWorkerIsThere() throws IOException {
        RunId run = place.run();
        place.jdbc
                .sql("update stook.frame set width = 1000000, height = 1000000")
                .update();
        try {
            work(run);
            assertThat(place.value("select state || ' ' || reason_code || failures from stook.run where id = " + run))
                    .isEqualTo("HELD MEMORY0");
            assertThat(place.value("select reason_text from stook.run where id = " + run))
                    .startsWith("this stack needs a worker with 59604.8 GiB of heap, the largest has ")
                    .endsWith("start such a worker, then release the run");
            place.jdbc
                    .sql("insert into stook.worker (id, host, pid, version, schema_min, schema_max, memory_bytes)"
                            + " values ('giant', 'big', 1, '1', 1, 99, 9e17)")
                    .update();
            RunId other = place.run();
            work(other);
            assertThat(place.value("select state || ' ' || reason_code from stook.run where id = " + other))
                    .isEqualTo("READY MEMORY");
        } finally {
            place.jdbc.sql("delete from stook.worker where id = 'giant'").update();
            place.jdbc.sql("update stook.frame set width = 240, height = 160").update();
        }
    }

    private static void work(RunId run) {
        node.getBean(RunTask.class).workOnce(run, node.getBean(CompositionWork.class));
    }
}
