package org.stook.orders.attempt;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.stook.orders.RunId;
import org.stook.orders.RunState;

/**
 * The attempt number as a fence. A claim raises it; every later write names the number it was given and finds no row once
 * another claim has raised it again. So a worker that was taken for dead and wakes up can publish nothing, whatever it
 * believes. Each call is a transaction of its own.
 */
public final class Fence {
    private static final Duration SHARE_AGAIN = Duration.ofSeconds(10);

    private final Ledger ledger;
    private final JdbcClient jdbc;
    private final WorkOrders orders;
    private final String workerId;

    public Fence(DataSource source, PlatformTransactionManager transactions, String workerId) {
        this.ledger = new Ledger(source, transactions, workerId);
        this.jdbc = ledger.jdbc;
        this.orders = new WorkOrders(jdbc);
        this.workerId = workerId;
    }

    /**
     * Takes the run for a new attempt. The caller holds the run's task, so an attempt that is still open has gone without a
     * word and is closed as LOST, which counts for nothing.
     */
    public Claim claim(RunId run, String engineVersion) {
        return ledger.within(() -> {
            Ledger.Row row = ledger.lock(run);
            RunState state = row.state();
            if (state != RunState.READY && state != RunState.RUNNING && state != RunState.PUBLISHING) {
                return new Claim.Nothing(state);
            }
            Optional<Claim> later = later(run);
            if (later.isPresent()) {
                return later.get();
            }
            ledger.close(run, row.attempt(), "LOST", null, null);
            if (state == RunState.RUNNING) {
                ledger.leave(run, row.cancelRequested() ? "CANCELLED" : "READY", "LOST", "the attempt left no word");
                if (row.cancelRequested()) {
                    return new Claim.Nothing(RunState.CANCELLED);
                }
            }
            return take(run, row.attempt() + 1, engineVersion);
        });
    }

    private Claim take(RunId run, int attempt, String engineVersion) {
        jdbc.sql("""
                        update stook.run set state = case state when 'READY' then 'RUNNING' else state end, attempt = :attempt,
                          worker_id = :worker, not_before = null, reason_code = null, reason_text = null,
                          stage = null, fraction = 0
                        where id = :run""")
                .param("attempt", attempt)
                .param("worker", workerId)
                .param("run", run.value())
                .update();
        jdbc.sql("""
                        insert into stook.attempt (run_id, n, worker_id, engine_version, started_at)
                        values (:run, :attempt, :worker, :engine, clock_timestamp())""")
                .param("run", run.value())
                .param("attempt", attempt)
                .param("worker", workerId)
                .param("engine", engineVersion)
                .update();
        return new Claim.Taken(orders.of(run, attempt), staged(run));
    }

    private @Nullable StagedResult staged(RunId run) {
        List<StagedResult> staged = jdbc.sql("""
                        select staged_name, result_name, result_sha256 from stook.run
                        where id = :run and state = 'PUBLISHING'""")
                .param("run", run.value())
                .query((row, n) -> new StagedResult(row.getString(1), row.getString(2), row.getString(3)))
                .list();
        return staged.isEmpty() ? null : staged.get(0);
    }

    private Optional<Claim> later(RunId run) {
        return jdbc.sql("""
                        select not_before, 'a pause after a failure' from stook.run
                          where id = :run and not_before > clock_timestamp()
                        union all
                        (select clock_timestamp() + make_interval(secs => :again), 'share ' || sh.name || ' is ' || sh.state
                          from stook.run r join stook.stack s on s.id = r.stack_id join stook.station st on st.id = s.station_id
                          join stook.share sh on sh.id = coalesce(st.publish_share_id, st.intake_share_id)
                            or sh.id in (select share_id from stook.stack_frame f where f.stack_id = s.id)
                          where r.id = :run and sh.state <> 'OK' order by sh.id limit 1)
                        limit 1""")
                .param("run", run.value())
                .param("again", (double) SHARE_AGAIN.toSeconds())
                .query((row, n) -> (Claim)
                        new Claim.Later(row.getObject(1, OffsetDateTime.class).toInstant(), row.getString(2)))
                .optional();
    }

    /**
     * Tells where the attempt is, for display, and hears whether it may go on.
     *
     * @param stage name of the stage
     * @param fraction of the whole run, 0 to 1
     */
    public Standing progress(RunId run, int attempt, String stage, double fraction) {
        return jdbc.sql("""
                        update stook.run set stage = :stage, fraction = :fraction
                        where id = :run and attempt = :attempt and state in ('RUNNING', 'PUBLISHING')
                        returning cancel_requested and state = 'RUNNING'""")
                .param("stage", stage)
                .param("fraction", Math.max(0, Math.min(1, fraction)))
                .param("run", run.value())
                .param("attempt", attempt)
                .query(Boolean.class)
                .optional()
                .map(cancel -> cancel ? Standing.CANCEL : Standing.VALID)
                .orElse(Standing.LEASE_LOST);
    }

    void workedOnBy(RunId run, int attempt, long batchExecutionId) {
        jdbc.sql("update stook.attempt set batch_execution_id = :batch where run_id = :run and n = :attempt")
                .param("batch", batchExecutionId)
                .param("run", run.value())
                .param("attempt", attempt)
                .update();
    }

    /** The point of no return: from here on the result will be published, by this attempt or by the one that takes over. */
    public Standing publishing(RunId run, int attempt, StagedResult result) {
        return ledger.within(() -> {
            Standing cancel = progress(run, attempt, "publish", 1);
            if (cancel != Standing.VALID) {
                return cancel;
            }
            // Saying it twice is harmless: the answer to the first time may have been lost.
            return validIf(jdbc.sql("""
                            update stook.run set state = 'PUBLISHING', staged_name = :staged, result_name = :name,
                              result_sha256 = :sha256
                            where id = :run and attempt = :attempt
                              and (state = 'RUNNING' or (state = 'PUBLISHING' and result_sha256 = :sha256))""")
                    .param("staged", result.stagedName())
                    .param("name", result.finalName())
                    .param("sha256", result.sha256())
                    .param("run", run.value())
                    .param("attempt", attempt)
                    .update());
        });
    }

    /** What an earlier attempt staged is gone: this one computes again. */
    public Standing stagedResultLost(RunId run, int attempt) {
        return ledger.within(() -> validIf(jdbc.sql("""
                        update stook.run set state = 'RUNNING', staged_name = null, result_name = null, result_sha256 = null
                        where id = :run and attempt = :attempt and state = 'PUBLISHING'""")
                .param("run", run.value())
                .param("attempt", attempt)
                .update()));
    }

    /** The file stands under its final name: makes it official, and supersedes the stack's publication so far. */
    public Standing published(RunId run, int attempt, PublishedResult result) {
        return ledger.within(() -> {
            int rows = jdbc.sql("""
                            update stook.run set state = 'PUBLISHED', stage = null, fraction = 1, staged_name = null,
                              score = cast(:score as jsonb), verdict = :verdict
                            where id = :run and attempt = :attempt and state = 'PUBLISHING'""")
                    .param("score", result.scoreJson())
                    .param("verdict", result.verdict())
                    .param("run", run.value())
                    .param("attempt", attempt)
                    .update();
            if (rows == 0) {
                return validIf(alreadyPublished(run, attempt));
            }
            record(run, attempt, result, supersede(run));
            ledger.close(run, attempt, "PUBLISHED", null, null);
            return Standing.VALID;
        });
    }

    private int alreadyPublished(RunId run, int attempt) {
        return jdbc.sql("select count(*) from stook.publication where run_id = :run and attempt = :attempt")
                .param("run", run.value())
                .param("attempt", attempt)
                .query(Integer.class)
                .single();
    }

    private @Nullable Long supersede(RunId run) {
        List<Long> earlier =
                jdbc.sql("""
                        update stook.run set state = 'SUPERSEDED'
                        where state = 'PUBLISHED' and id <> :run
                          and stack_id = (select stack_id from stook.run where id = :run)
                        returning id""").param("run", run.value()).query(Long.class).list();
        return earlier.stream().max(Long::compare).orElse(null);
    }

    private void record(RunId run, int attempt, PublishedResult result, @Nullable Long supersedes) {
        jdbc.sql("""
                        insert into stook.publication (run_id, attempt, stack_id, share_id, name, sha256, bytes,
                          engine_version, files, supersedes, published_at)
                        select r.id, r.attempt, r.stack_id, coalesce(st.publish_share_id, st.intake_share_id), r.result_name,
                          r.result_sha256, :bytes, a.engine_version, cast(:files as jsonb), :supersedes, clock_timestamp()
                        from stook.run r join stook.attempt a on a.run_id = r.id and a.n = r.attempt
                          join stook.stack s on s.id = r.stack_id join stook.station st on st.id = s.station_id
                        where r.id = :run and r.attempt = :attempt""")
                .param("bytes", result.bytes())
                .param("files", result.filesJson())
                .param("supersedes", supersedes)
                .param("run", run.value())
                .param("attempt", attempt)
                .update();
    }

    private static Standing validIf(int rows) {
        return rows == 1 ? Standing.VALID : Standing.LEASE_LOST;
    }
}
