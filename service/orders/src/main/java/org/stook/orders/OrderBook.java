package org.stook.orders;

import com.github.kagkarlsson.scheduler.Clock;
import com.github.kagkarlsson.scheduler.Scheduler;
import com.github.kagkarlsson.scheduler.SchedulerBuilder;
import com.github.kagkarlsson.scheduler.SchedulerClient;
import com.github.kagkarlsson.scheduler.SchedulerName;
import com.github.kagkarlsson.scheduler.task.OnStartup;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.TaskDescriptor;
import java.time.Duration;
import java.util.List;
import javax.sql.DataSource;
import org.springframework.jdbc.datasource.TransactionAwareDataSourceProxy;

/** How db-scheduler is set up, on both sides of the seam: one table for runs, another for the service's recurring tasks. */
public final class OrderBook {
    /** Where runs wait. */
    public static final String RUNS_TABLE = "jobs.scheduled_tasks";

    /** Where the service's recurring tasks wait. */
    public static final String SERVICE_TABLE = "jobs.service_tasks";

    /** The task of a run: instance = run id, no data, so that nothing has to be read across versions. */
    public static final TaskDescriptor<Void> RUN = TaskDescriptor.of("run");

    private static final Duration HEARTBEAT = Duration.ofSeconds(5);
    /** Smallest the library allows; 5 s x 4: silent for 20 s means dead. */
    private static final int MISSED_HEARTBEATS = 4;

    private static final Duration POLL = Duration.ofMillis(500);
    private static final Duration DRAIN = Duration.ofSeconds(60);
    /** By default tasks of unknown name are deleted after two weeks. An old node must not throw away a new one's work. */
    private static final Duration NEVER = Duration.ofDays(3650);

    private OrderBook() {}

    /** For posting runs; takes part in the caller's transaction, so that run and task commit together or not at all. */
    public static SchedulerClient client(DataSource source) {
        return SchedulerClient.Builder.create(new TransactionAwareDataSourceProxy(source))
                .tableName(RUNS_TABLE)
                .enablePriority()
                .build();
    }

    /**
     * The scheduler of a worker process: one slot.
     *
     * @param name unique, at most 50 characters; the worker's id, for a dead execution is matched to its worker by it
     */
    public static SchedulerBuilder worker(DataSource source, Clock clock, String name, Task<Void> runTask) {
        return common(Scheduler.create(source, List.of(runTask)), clock, name)
                .tableName(RUNS_TABLE)
                .threads(1)
                .enablePriority();
    }

    /** The scheduler of a service process; each recurring task runs on one service at a time. */
    @SafeVarargs
    public static <T extends Task<?> & OnStartup> SchedulerBuilder service(
            DataSource source, Clock clock, String name, T... recurring) {
        return common(Scheduler.create(source).startTasks(recurring), clock, name)
                .tableName(SERVICE_TABLE)
                // One each: a slow task must not keep the others waiting.
                .threads(recurring.length);
    }

    private static SchedulerBuilder common(SchedulerBuilder builder, Clock clock, String name) {
        return builder.schedulerName(new SchedulerName.Fixed(name))
                .clock(clock)
                // Upper limit 1.0: what is fetched beyond the free slots would wait without a heartbeat.
                .pollUsingLockAndFetch(0.5, 1.0)
                .pollingInterval(POLL)
                .heartbeatInterval(HEARTBEAT)
                .missedHeartbeatsLimit(MISSED_HEARTBEATS)
                .deleteUnresolvedAfter(NEVER)
                .shutdownMaxWait(DRAIN);
    }
}
