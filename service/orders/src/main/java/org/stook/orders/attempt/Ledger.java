package org.stook.orders.attempt;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Objects;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.core.retry.RetryOperations;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.TransactionDefinition;
import org.springframework.transaction.support.TransactionTemplate;
import org.stook.orders.Actor;
import org.stook.orders.RunId;
import org.stook.orders.RunState;

/** What claims, fence, endings and deaths share: transactions, the run's row under lock, the closing of an attempt. */
final class Ledger {
    /** A run's row, locked until the transaction ends. */
    record Row(RunState state, int attempt, int lastDeadAttempt, boolean cancelRequested, Instant queuedAt) {}

    final JdbcClient jdbc;
    private final TransactionTemplate transaction;
    final String workerId;

    private final RetryOperations patience;

    Ledger(DataSource source, PlatformTransactionManager transactions, String workerId) {
        this(source, transactions, workerId, Patience.forAnOutage());
    }

    Ledger(DataSource source, PlatformTransactionManager transactions, String workerId, RetryOperations patience) {
        this.jdbc = JdbcClient.create(source);
        this.workerId = workerId;
        this.patience = patience;
        // Of its own, whatever transaction the caller is in: a fence that commits later than the file moves is none.
        this.transaction = new TransactionTemplate(transactions);
        this.transaction.setPropagationBehavior(TransactionDefinition.PROPAGATION_REQUIRES_NEW);
    }

    /** Like {@link #within}, but sits out an outage of the database. The work must bear being done twice. */
    <T> T insist(Supplier<T> work) {
        return Objects.requireNonNull(patience.invoke(() -> within(work)));
    }

    <T> T within(Supplier<T> work) {
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, "worker:" + workerId);
            return work.get();
        }));
    }

    /** For what is only shown: the commit does not wait for the disk, and nobody is named as acting. */
    <T> T lightly(Supplier<T> work) {
        return Objects.requireNonNull(transaction.execute(t -> {
            jdbc.sql("select set_config('synchronous_commit', 'off', true)")
                    .query(String.class)
                    .single();
            return work.get();
        }));
    }

    Row lock(RunId run) {
        return jdbc.sql("""
                        select state, attempt, last_dead_attempt, cancel_requested, queued_at
                        from stook.run where id = :run for update""")
                .param("run", run.value())
                .query((row, n) -> new Row(
                        RunState.valueOf(row.getString(1)),
                        row.getInt(2),
                        row.getInt(3),
                        row.getBoolean(4),
                        row.getObject(5, OffsetDateTime.class).toInstant()))
                .single();
    }

    void close(RunId run, int attempt, String outcome, @Nullable String code, @Nullable String reason) {
        jdbc.sql("""
                        update stook.attempt set ended_at = clock_timestamp(), outcome = :outcome,
                          reason_code = :code, reason_text = :reason
                        where run_id = :run and n = :attempt and ended_at is null""")
                .param("outcome", outcome)
                .param("code", code)
                .param("reason", reason)
                .param("run", run.value())
                .param("attempt", attempt)
                .update();
    }

    /** Leaves RUNNING for another state, or stays in PUBLISHING, whose staged result the next attempt takes over. */
    void leave(RunId run, String runningTo, @Nullable String code, @Nullable String reason) {
        jdbc.sql("""
                        update stook.run set state = case state when 'RUNNING' then :to else state end,
                          reason_code = :code, reason_text = :reason, stage = null, fraction = null
                        where id = :run""")
                .param("to", runningTo)
                .param("code", code)
                .param("reason", reason)
                .param("run", run.value())
                .update();
    }
}
