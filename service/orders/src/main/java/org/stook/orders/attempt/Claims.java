package org.stook.orders.attempt;

import java.time.Duration;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.orders.RunId;
import org.stook.orders.RunState;

/** Taking runs: each claim is a new attempt with a higher number, which fences off all earlier ones. */
final class Claims {
    private static final Duration SHARE_AGAIN = Duration.ofSeconds(10);

    private final Ledger ledger;
    private final JdbcClient jdbc;
    private final WorkOrders orders;

    Claims(Ledger ledger) {
        this.ledger = ledger;
        this.jdbc = ledger.jdbc;
        this.orders = new WorkOrders(jdbc);
    }

    /**
     * Takes the run for a new attempt. The caller holds the run's task, so an attempt that is still open has gone without a
     * word and is closed as LOST, which counts for nothing.
     */
    Claim claim(RunId run, String engineVersion) {
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
                .param("worker", ledger.workerId)
                .param("run", run.value())
                .update();
        jdbc.sql("""
                        insert into stook.attempt (run_id, n, worker_id, engine_version, started_at)
                        values (:run, :attempt, :worker, :engine, clock_timestamp())""")
                .param("run", run.value())
                .param("attempt", attempt)
                .param("worker", ledger.workerId)
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
                          where r.id = :run and (sh.state = 'GONE'
                            or sh.state <> 'OK' and sh.id = coalesce(st.publish_share_id, st.intake_share_id))
                          order by sh.id limit 1)
                        limit 1""")
                .param("run", run.value())
                .param("again", (double) SHARE_AGAIN.toSeconds())
                .query((row, n) -> (Claim)
                        new Claim.Later(row.getObject(1, OffsetDateTime.class).toInstant(), row.getString(2)))
                .optional();
    }
}
