package org.stook.node;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.Scheduler;
import java.io.BufferedReader;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.concurrent.CountDownLatch;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.context.ConfigurableApplicationContext;
import org.stook.node.job.CompositionWork;
import org.stook.orders.DbClock;
import org.stook.orders.OrderBook;
import org.stook.orders.RunId;
import org.stook.orders.attempt.RunTask;

/** A worker that is told to end. */
class DrainTest {
    @TempDir
    private static Path folder;

    private static Workplace place;

    @BeforeAll
    static void open() throws IOException {
        place = new Workplace(DrainTest.class, folder);
    }

    @AfterAll
    static void close() {
        place.source.close();
    }

    @Test
    void itHandsItsRunBackUncounted() throws Exception {
        RunId run;
        try (ConfigurableApplicationContext node = place.node("w1")) {
            run = place.run();
            Thread stopping = drain(node);
            stopping.join();
        }
        assertThat(place.value(
                        "select state || ' ' || reason_code || failures || deaths from stook.run where id = " + run))
                .isEqualTo("READY DRAIN00");
        assertThat(place.value("select outcome from stook.attempt where run_id = " + run))
                .isEqualTo("HANDED_BACK");
        place.jdbc.sql("delete from jobs.scheduled_tasks").update();
    }

    /** Starts a scheduler that is told to stop as soon as it has claimed. */
    private static Thread drain(ConfigurableApplicationContext node) throws InterruptedException {
        Scheduler[] scheduler = new Scheduler[1];
        Thread[] stopping = new Thread[1];
        CountDownLatch claimed = new CountDownLatch(1);
        scheduler[0] = OrderBook.worker(
                        place.source,
                        new DbClock(place.source),
                        "w1",
                        node.getBean(RunTask.class).with(attempt -> {
                            stopping[0] = new Thread(scheduler[0]::stop);
                            stopping[0].start();
                            claimed.countDown();
                            while (!scheduler[0].getSchedulerState().isShuttingDown()) {
                                Thread.onSpinWait();
                            }
                            return node.getBean(CompositionWork.class).workOn(attempt);
                        }))
                .build();
        scheduler[0].start();
        claimed.await();
        return stopping[0];
    }

    @Test
    void aProcessThatIsTerminatedTakesItsLeave() throws Exception {
        Process process = place.process("brief", "");
        try (BufferedReader lines = process.inputReader(StandardCharsets.UTF_8)) {
            StringBuilder output = new StringBuilder();
            String line = lines.readLine();
            while (line != null && !line.contains("worker brief is ready")) {
                output.append(line).append('\n');
                line = lines.readLine();
            }
            assertThat(line).as(output.toString()).isNotNull();
            // Through the handle: the process itself would close the stream that is still read.
            process.toHandle().destroy();
            lines.lines().forEach(l -> {});
        }
        assertThat(process.waitFor()).isEqualTo(143);
        assertThat(place.value("select state from stook.worker where id = 'brief'"))
                .isEqualTo("GONE");
        assertThat(folder.resolve("scratch/brief")).doesNotExist();
    }
}
