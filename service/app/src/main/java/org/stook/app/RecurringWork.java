package org.stook.app;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.task.helper.RecurringTask;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import com.github.kagkarlsson.scheduler.task.schedule.FixedDelay;
import java.util.List;
import java.util.UUID;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.boot.autoconfigure.condition.ConditionalOnProperty;
import org.springframework.context.SmartLifecycle;
import org.springframework.stereotype.Component;
import org.stook.orders.DbClock;
import org.stook.orders.OrderBook;

/** Steps all that recurs. Where several services share a database, each task runs on one of them at a time. */
@Component
@ConditionalOnProperty(name = "stook.recurring", matchIfMissing = true)
class RecurringWork implements SmartLifecycle {
    private static final Logger LOG = LoggerFactory.getLogger(RecurringWork.class);
    private final DataSource source;
    private final List<Recurring> all;
    private @Nullable Scheduler scheduler;

    RecurringWork(DataSource source, List<Recurring> all) {
        this.source = source;
        this.all = List.copyOf(all);
    }

    @Override
    public synchronized void start() {
        RecurringTask<?>[] tasks = all.stream().map(RecurringWork::task).toArray(RecurringTask<?>[]::new);
        Scheduler started = OrderBook.service(source, new DbClock(source), "service/" + UUID.randomUUID(), tasks)
                .build();
        started.start();
        scheduler = started;
    }

    private static RecurringTask<Void> task(Recurring what) {
        return Tasks.recurring(what.name(), FixedDelay.of(what.between())).execute((instance, context) -> {
            try {
                what.step().accept(() -> !context.getSchedulerState().isShuttingDown());
            } catch (RuntimeException e) {
                // The next step may find the database or the share back; until then the log says what is missing.
                LOG.warn("{} could not finish its step and goes on with the next", what.name(), e);
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
