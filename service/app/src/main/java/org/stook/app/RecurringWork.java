package org.stook.app;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.time.Duration;
import java.util.UUID;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import org.stook.app.intake.FirstLooks;
import org.stook.app.intake.IntakePoller;
import org.stook.app.queue.QueueUpkeep;
import org.stook.orders.DbClock;
import org.stook.orders.OrderBook;

/** Steps the intake and the upkeep. Where several services share a database, each task runs on one of them at a time. */
@Component
@ConditionalOnProperty(name = "stook.recurring", matchIfMissing = true)
class RecurringWork implements SmartLifecycle {
    private static final Logger LOG = LoggerFactory.getLogger(RecurringWork.class);
    private static final Duration BETWEEN_POLLS = Duration.ofMillis(700);
    private static final Duration BETWEEN_LOOKS = Duration.ofMillis(300);
    /** Few enough that a step ends within its heartbeat, and that the station page hears of a sweep soon. */
    private static final int LOOKS_A_STEP = 24;

    private static final Duration BETWEEN_UPKEEPS = Duration.ofMinutes(1);

    private final DataSource source;
    private final IntakePoller poller;
    private final FirstLooks looks;
    private final QueueUpkeep upkeep;
    private @Nullable Scheduler scheduler;

    RecurringWork(DataSource source, IntakePoller poller, FirstLooks looks, QueueUpkeep upkeep) {
        this.source = source;
        this.poller = poller;
        this.looks = looks;
        this.upkeep = upkeep;
    }

    @Override
    public synchronized void start() {
        Scheduler started = OrderBook.service(
                        source,
                        new DbClock(source),
                        "service/" + UUID.randomUUID(),
                        task("intake", BETWEEN_POLLS, poller::step),
                        task("look", BETWEEN_LOOKS, () -> looks.step(LOOKS_A_STEP)),
                        task("upkeep", BETWEEN_UPKEEPS, upkeep::step))
                .build();
        started.start();
        scheduler = started;
    }

    private static RecurringTask<Void> task(String name, Duration between, Runnable step) {
        return Tasks.recurring(name, FixedDelay.of(between)).execute((instance, context) -> {
            try {
                step.run();
            } catch (RuntimeException e) {
                // The next step may find the database or the share back; until then the log says what is missing.
                LOG.warn("{} could not finish its step and goes on with the next", name, e);
            }
        });
    }

    @Override
    public synchronized void stop() {
        if (scheduler != null) {
            scheduler.stop();
            scheduler = null;
        }
    }

    @Override
    public synchronized boolean isRunning() {
        return scheduler != null;
    }
}
