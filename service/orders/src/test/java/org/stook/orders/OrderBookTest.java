package org.stook.orders;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.PublishedResult;
import org.stook.orders.attempt.RunTask;
import org.stook.orders.attempt.StagedResult;

/** The schedulers as the programs start them, with threads and polling of their own. */
class OrderBookTest {
    private static final Studio STUDIO = new Studio(OrderBookTest.class);
    private static final int RUNS = 20;

    @Test
    void twoWorkersShareTheRunsAndEachIsPublishedOnce() throws InterruptedException {
        CountDownLatch left = new CountDownLatch(RUNS);
        for (int i = 0; i < RUNS; i++) {
            STUDIO.run();
        }
        List<Scheduler> workers =
                Stream.of("w1", "w2").map(id -> worker(id, left)).toList();
        workers.forEach(Scheduler::start);
        assertThat(left.await(30, TimeUnit.SECONDS)).isTrue();
        workers.forEach(Scheduler::stop);
        assertThat(STUDIO.value("select count(*) from stook.publication")).isEqualTo("" + RUNS);
        assertThat(STUDIO.value("select count(*) from stook.attempt")).isEqualTo("" + RUNS);
        assertThat(STUDIO.value("select count(*) from stook.run where state <> 'PUBLISHED'"))
                .isEqualTo("0");
        assertThat(STUDIO.value("select count(*) from jobs.scheduled_tasks")).isEqualTo("0");
    }

    @Test
    void aRecurringTaskOfTheServiceRunsFromItsOwnTable() throws InterruptedException {
        CountDownLatch done = new CountDownLatch(1);
        Scheduler service = OrderBook.service(
                        STUDIO.source,
                        new DbClock(STUDIO.source),
                        "service-1",
                        Tasks.recurring("upkeep", FixedDelay.of(Duration.ofMinutes(1)))
                                .execute((instance, context) -> done.countDown()))
                .build();
        service.start();
        assertThat(done.await(30, TimeUnit.SECONDS)).isTrue();
        service.stop();
        assertThat(STUDIO.value("select task_name from jobs.service_tasks")).isEqualTo("upkeep");
    }

    private static Scheduler worker(String id, CountDownLatch left) {
        RunTask task = new RunTask(STUDIO.source, STUDIO.transactions, id, "1");
        return OrderBook.worker(STUDIO.source, new DbClock(STUDIO.source), id, task.with(attempt -> {
                    Outcome outcome = publish(attempt);
                    left.countDown();
                    return outcome;
                }))
                .build();
    }

    private static Outcome publish(Attempt attempt) {
        attempt.publishing(new StagedResult(
                attempt.order().stagedName(), attempt.order().finalName(Studio.HASH, ".tif"), Studio.HASH));
        attempt.published(new PublishedResult(9, "[]", null, null));
        return new Outcome.Published();
    }
}
