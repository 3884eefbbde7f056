package org.stook.orders;

import java.util.List;
import java.util.Objects;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/**
 * Runs as the service sees them: ordered, held, released, cancelled, retried. Each call takes part in the caller's
 * transaction or opens its own.
 */
public final class Runs {
    private final JdbcClient jdbc;
    private final Queue queue;
    private final TransactionTemplate transaction;

    public Runs(DataSource source, PlatformTransactionManager transactions) {
        this.jdbc = JdbcClient.create(source);
        this.queue = new Queue(source);
        this.transaction = new TransactionTemplate(transactions);
    }

    /**
     * Orders a run and puts it in the queue, both or neither. Ordering again what is still open gives the open run.
     *
     * @throws IllegalStateException if the stack is not sealed
     */
    public RunId create(NewRun wanted) {
        return within(wanted.actor(), () -> {
            List<RunId> created = jdbc.sql("""
                            insert into stook.run (stack_id, settings_id, priority, created_by)
                            select s.id, :settings, :priority, :actor from stook.stack s
                            where s.id = :stack and s.state = 'SEALED'
                            on conflict (stack_id, settings_id)
                              where state in ('READY', 'HELD', 'RUNNING', 'PUBLISHING') do nothing
                            returning id""")
                    .param("settings", wanted.settingsId())
                    .param("priority", wanted.priority())
                    .param("actor", wanted.actor())
                    .param("stack", wanted.stackId())
                    .query((row, n) -> new RunId(row.getLong(1)))
                    .list();
            if (created.isEmpty()) {
                return open(wanted);
            }
            RunId run = created.get(0);
            audit("run.CREATED", run, "priority", Integer.toString(wanted.priority()));
            queue.post(run);
            return run;
        });
    }

    /** Takes a waiting run out of the queue until it is released. */
    public Change hold(RunId run, String actor, String reason) {
        return within(actor, () -> {
            int held = jdbc.sql("""
                            update stook.run set state = 'HELD', reason_code = 'HELD', reason_text = :reason
                            where id = :run and state = 'READY'""")
                    .param("run", run.value())
                    .param("reason", reason)
                    .update();
            if (held == 1) {
                queue.unpost(run);
            }
            return change(held, run);
        });
    }

    /** Puts a held run back in the queue. */
    public Change release(RunId run, String actor) {
        return within(actor, () -> {
            int released = jdbc.sql("""
                            update stook.run set state = 'READY', queued_at = now(), not_before = null,
                              reason_code = null, reason_text = null
                            where id = :run and state = 'HELD'""").param("run", run.value()).update();
            if (released == 1) {
                queue.post(run);
            }
            return change(released, run);
        });
    }

    /**
     * Cancels: at once while waiting; a running attempt is asked to stop and does so at its next frame. From the point of no
     * return on it is too late.
     */
    public Change cancel(RunId run, String actor, String reason) {
        return within(actor, () -> {
            int cancelled = jdbc.sql("""
                            update stook.run set state = 'CANCELLED', reason_code = 'CANCELLED', reason_text = :reason
                            where id = :run and state in ('READY', 'HELD')""")
                    .param("run", run.value())
                    .param("reason", reason)
                    .update();
            if (cancelled == 1) {
                queue.unpost(run);
                return change(1, run);
            }
            int asked = jdbc.sql("update stook.run set cancel_requested = true, reason_text = :reason"
                            + " where id = :run and state = 'RUNNING'")
                    .param("run", run.value())
                    .param("reason", reason)
                    .update();
            if (asked == 1) {
                audit("run.CANCEL-REQUESTED", run, "reason", reason);
            }
            return change(asked, run);
        });
    }

    /** A failed or quarantined run starts over, its counters at zero. */
    public Change retry(RunId run, String actor) {
        return within(actor, () -> {
            int retried = jdbc.sql("""
                            update stook.run set state = 'READY', failures = 0, deaths = 0, cancel_requested = false,
                              not_before = null, reason_code = null, reason_text = null, queued_at = now(),
                              stage = null, fraction = null, staged_name = null, result_sha256 = null, result_name = null
                            where id = :run and state in ('FAILED', 'QUARANTINED')
                              and not exists (select 1 from stook.run o
                                where o.stack_id = run.stack_id and o.settings_id = run.settings_id
                                  and o.state in ('READY', 'HELD', 'RUNNING', 'PUBLISHING'))""").param("run", run.value()).update();
            if (retried == 1) {
                queue.post(run);
            }
            return change(retried, run);
        });
    }

    /** Changes the priority of an open run; one that runs already keeps its place. */
    public Change prioritise(RunId run, int priority, String actor) {
        return within(actor, () -> {
            int changed = jdbc.sql("""
                            update stook.run set priority = :priority
                            where id = :run and state in ('READY', 'HELD', 'RUNNING', 'PUBLISHING')""")
                    .param("run", run.value())
                    .param("priority", priority)
                    .update();
            if (changed == 1) {
                jdbc.sql("update jobs.scheduled_tasks set priority = :priority"
                                + " where task_name = 'run' and task_instance = :instance")
                        .param("priority", priority)
                        .param("instance", run.toString())
                        .update();
                audit("run.PRIORITY", run, "priority", Integer.toString(priority));
            }
            return change(changed, run);
        });
    }

    private RunId open(NewRun wanted) {
        return jdbc.sql("""
                        select id from stook.run where stack_id = :stack and settings_id = :settings
                          and state in ('READY', 'HELD', 'RUNNING', 'PUBLISHING')""")
                .param("stack", wanted.stackId())
                .param("settings", wanted.settingsId())
                .query((row, n) -> new RunId(row.getLong(1)))
                .optional()
                .orElseThrow(() -> new IllegalStateException("stack " + wanted.stackId() + " is not sealed"));
    }

    private Change change(int rows, RunId run) {
        RunState state = jdbc.sql("select state from stook.run where id = :run")
                .param("run", run.value())
                .query((row, n) -> RunState.valueOf(row.getString(1)))
                .optional()
                .orElseThrow(() -> new IllegalArgumentException("there is no run " + run));
        return new Change(rows == 1, state);
    }

    private void audit(String kind, RunId run, String key, String value) {
        jdbc.sql(
                        "select stook.write_audit(:kind, :subject, jsonb_build_object(cast(:key as text), cast(:value as text)))")
                .param("kind", kind)
                .param("subject", "run/" + run)
                .param("key", key)
                .param("value", value)
                .query(Long.class)
                .single();
    }

    private <T> T within(String actor, Supplier<T> work) {
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            return work.get();
        }));
    }
}
