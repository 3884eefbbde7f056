package org.stook.orders;

import com.github.kagkarlsson.scheduler.SchedulerClient;
import java.time.Instant;
import java.time.OffsetDateTime;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;

/** The tasks of runs in the queue, in the caller's transaction. */
final class Queue {
    private final JdbcClient jdbc;
    private final SchedulerClient client;

    Queue(DataSource source) {
        this.jdbc = JdbcClient.create(source);
        this.client = OrderBook.client(source);
    }

    void post(RunId run) {
        record Place(int priority, Instant since) {}
        Place place = jdbc.sql("select priority, queued_at from stook.run where id = :run")
                .param("run", run.value())
                .query((row, n) -> new Place(
                        row.getInt(1), row.getObject(2, OffsetDateTime.class).toInstant()))
                .single();
        client.scheduleIfNotExists(
                OrderBook.RUN
                        .instance(run.toString())
                        .priority(place.priority())
                        .build(),
                place.since());
    }

    /** A task that is being picked at this moment stays; its worker then finds nothing to claim. */
    void unpost(RunId run) {
        jdbc.sql(
                        "delete from jobs.scheduled_tasks where task_name = 'run' and task_instance = :instance and not picked")
                .param("instance", run.toString())
                .update();
    }
}
