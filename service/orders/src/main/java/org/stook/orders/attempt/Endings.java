package org.stook.orders.attempt;

import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.function.Function;
import org.stook.orders.RunId;
import org.stook.orders.RunState;

/** How an attempt ends without a publication. All of it behind the fence. */
final class Endings {
    /** Pauses after the first and the second transient failure; the third is final. */
    private static final List<Duration> BACKOFF = List.of(Duration.ofSeconds(10), Duration.ofSeconds(60));

    private static final Outcome.HandedBack SILENT =
            new Outcome.HandedBack("SILENT", "the worker could not reach the database for a while", Duration.ZERO);

    private final Ledger ledger;

    Endings(Ledger ledger) {
        this.ledger = ledger;
    }

    /** Writes the outcome down and says what becomes of the run's task. Saying it twice is harmless. */
    Next end(RunId run, int attempt, Outcome outcome) {
        if (outcome instanceof Outcome.Failed f) {
            return ours(run, attempt, row -> failed(run, attempt, f.code(), f.reason()));
        } else if (outcome instanceof Outcome.Transient t) {
            return ours(run, attempt, row -> transientFailure(run, attempt, t));
        } else if (outcome instanceof Outcome.HandedBack h) {
            return ours(run, attempt, row -> handedBack(run, attempt, h, row));
        } else if (outcome instanceof Outcome.Held h) {
            return ours(run, attempt, row -> held(run, attempt, h));
        } else if (outcome instanceof Outcome.Cancelled) {
            return ours(run, attempt, row -> cancelled(run, attempt, row));
        } else if (outcome instanceof Outcome.LeaseLost) {
            return leaseLost(run, attempt);
        }
        return new Next.Over();
    }

    /**
     * A worker that stopped because it could not be heard is heard again. If nobody has taken the run, it is given back and
     * waits no longer; if somebody has, this worker was taken for dead and is not.
     */
    private Next leaseLost(RunId run, int attempt) {
        return ledger.insist(() -> {
            Ledger.Row row = ledger.lock(run);
            if (isOurs(row, attempt)) {
                return handedBack(run, attempt, SILENT, row);
            }
            absolve(run, attempt);
            return new Next.NotOurs();
        });
    }

    /** Whoever says so lives: its death must not count towards the run's quarantine. */
    private void absolve(RunId run, int attempt) {
        int wrong = ledger.jdbc
                .sql("""
                        update stook.attempt set outcome = 'LOST', reason_text = 'the worker was taken for dead and came back'
                        where run_id = :run and n = :attempt and outcome = 'DIED'""")
                .param("run", run.value())
                .param("attempt", attempt)
                .update();
        if (wrong == 1) {
            ledger.jdbc
                    .sql("update stook.run set deaths = greatest(deaths - 1, 0) where id = :run")
                    .param("run", run.value())
                    .update();
        }
    }

    private Next ours(RunId run, int attempt, Function<Ledger.Row, Next> ending) {
        return ledger.insist(() -> {
            Ledger.Row row = ledger.lock(run);
            return isOurs(row, attempt) ? ending.apply(row) : new Next.NotOurs();
        });
    }

    private static boolean isOurs(Ledger.Row row, int attempt) {
        return row.attempt() == attempt && (row.state() == RunState.RUNNING || row.state() == RunState.PUBLISHING);
    }

    private Next failed(RunId run, int attempt, String code, String reason) {
        ledger.close(run, attempt, "FAILED", code, reason);
        ledger.jdbc
                .sql("""
                        update stook.run set state = 'FAILED', reason_code = :code, reason_text = :reason,
                          stage = null, fraction = null
                        where id = :run""")
                .param("code", code)
                .param("reason", reason)
                .param("run", run.value())
                .update();
        return new Next.Over();
    }

    private Next transientFailure(RunId run, int attempt, Outcome.Transient t) {
        int failures = ledger.jdbc
                .sql("update stook.run set failures = failures + 1 where id = :run returning failures")
                .param("run", run.value())
                .query(Integer.class)
                .single();
        if (failures > BACKOFF.size()) {
            return failed(run, attempt, t.code(), t.reason() + " (the third time)");
        }
        ledger.close(run, attempt, "TRANSIENT", t.code(), t.reason());
        ledger.leave(run, "READY", t.code(), t.reason());
        return new Next.Again(pause(run, BACKOFF.get(failures - 1)));
    }

    private Next handedBack(RunId run, int attempt, Outcome.HandedBack h, Ledger.Row row) {
        ledger.close(run, attempt, "HANDED_BACK", h.code(), h.reason());
        ledger.leave(run, "READY", h.code(), h.reason());
        // Without a delay it keeps its place in the queue: its time is that of its first waiting.
        return new Next.Again(h.delay().isZero() ? row.queuedAt() : pause(run, h.delay()));
    }

    private Next held(RunId run, int attempt, Outcome.Held h) {
        ledger.close(run, attempt, "HANDED_BACK", h.code(), h.reason());
        ledger.leave(run, "READY", h.code(), h.reason());
        ledger.jdbc
                .sql("update stook.run set state = 'HELD' where id = :run and state = 'READY'")
                .param("run", run.value())
                .update();
        return new Next.Over();
    }

    private Next cancelled(RunId run, int attempt, Ledger.Row row) {
        if (row.state() == RunState.PUBLISHING) {
            throw new IllegalStateException("run " + run + " is past the point of no return and cannot be cancelled");
        }
        ledger.close(run, attempt, "CANCELLED", null, null);
        ledger.jdbc.sql("""
                        update stook.run set state = 'CANCELLED', reason_code = 'CANCELLED', stage = null, fraction = null
                        where id = :run""").param("run", run.value()).update();
        return new Next.Over();
    }

    private Instant pause(RunId run, Duration pause) {
        return ledger.jdbc
                .sql("""
                        update stook.run set not_before = clock_timestamp() + make_interval(secs => :seconds)
                        where id = :run returning not_before""")
                .param("seconds", pause.toMillis() / 1000.0)
                .param("run", run.value())
                .query((row, n) -> row.getObject(1, OffsetDateTime.class).toInstant())
                .single();
    }
}
