package org.stook.node;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.testhelper.ManualScheduler;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.context.ConfigurableApplicationContext;
import org.stook.node.job.CompositionWork;
import org.stook.orders.OrderBook;
import org.stook.orders.RunId;
import org.stook.orders.attempt.RunTask;

/** A worker process dies without a word in the midst of a run; another finishes it. */
class KillTest {
    @TempDir
    private static Path folder;

    private static Workplace place;

    @BeforeAll
    static void open() throws IOException {
        place = new Workplace(KillTest.class, folder);
    }

    @AfterAll
    static void close() {
        place.source.close();
    }

    @ParameterizedTest
    @CsvSource({"after-blend, RUNNING, 2", "after-fence, PUBLISHING, 1", "after-moved, PUBLISHING, 1"})
    void aKilledWorkersRunIsPublishedOnceByAnother(String failpoint, String leftAs, int jobs) throws Exception {
        RunId run = place.run();
        Process process = place.process("doomed-" + failpoint, failpoint);
        String output = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(output).isEqualTo(137);
        assertThat(place.state(run)).isEqualTo(leftAs);
        try (ConfigurableApplicationContext node = place.node("w-" + failpoint)) {
            place.jdbc
                    .sql("update jobs.scheduled_tasks set last_heartbeat = now() - interval '1 hour'")
                    .update();
            ManualScheduler scheduler = scheduler(node);
            scheduler.runDeadExecutionDetection();
            scheduler.runAnyDueExecutions();
        }
        assertThat(place.value("select state || deaths || attempt from stook.run where id = " + run))
                .isEqualTo("PUBLISHED12");
        assertThat(place.value("select count(*) from stook.publication where run_id = " + run))
                .isEqualTo("1");
        assertThat(place.published().stream()
                        .filter(f -> f.contains("/" + run + "-"))
                        .map(f -> f.replaceFirst("(/\\d+-[0-9a-f]{16})[.].*", "$1.tif"))
                        .distinct())
                .as("one master and what stands beside it")
                .containsExactly(place.value("select name from stook.publication where run_id = " + run));
        assertThat(place.value(
                        "select count(distinct a.batch_execution_id) from stook.attempt a where run_id = " + run))
                .as("computed again only if nothing was staged")
                .isEqualTo("" + jobs);
        assertThat(place.value("select coalesce(max(placements_of), 0) from stook.attempt where run_id = " + run))
                .as("what is computed again is not registered again")
                .isEqualTo(jobs == 2 ? "1" : "0");
        assertThat(scratchOf("doomed-" + failpoint)).doesNotExist();
    }

    private static Path scratchOf(String worker) {
        return folder.resolve("scratch").resolve(worker);
    }

    private static ManualScheduler scheduler(ConfigurableApplicationContext node) {
        SettableClock clock = new SettableClock();
        clock.set(Instant.now().plusSeconds(1));
        var builder = TestHelper.createManualScheduler(
                place.source, List.of(node.getBean(RunTask.class).with(node.getBean(CompositionWork.class))));
        builder.clock(clock).tableName(OrderBook.RUNS_TABLE);
        builder.enablePriority().pollUsingLockAndFetch(0.5, 1.0).threads(1);
        return builder.build();
    }
}
