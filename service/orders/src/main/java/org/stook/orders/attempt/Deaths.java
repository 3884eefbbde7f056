package org.stook.orders.attempt;

import org.stook.orders.RunId;
import org.stook.orders.RunState;

/**
 * Counts attempts whose process went silent. Every node notices a dead execution by itself, so each death is noticed
 * several times; the task's version and the attempt's number see to it that it is counted once.
 */
final class Deaths {
    /** So many deaths, and no worker is risked for the run any more. */
    static final int LIMIT = 3;

    private final Ledger ledger;

    Deaths(Ledger ledger) {
        this.ledger = ledger;
    }

    /**
     * The holder of the run's task has not been heard of for too long.
     *
     * @param taskVersion version of the task's row as it was noticed; a newer one means that another node was faster
     */
    Next noticed(RunId run, long taskVersion) {
        return ledger.within(() -> {
            Ledger.Row row = ledger.lock(run);
            if (!isStill(run, taskVersion)) {
                return new Next.NotOurs();
            }
            if (row.state() == RunState.READY) {
                return new Next.Again(row.queuedAt());
            }
            if (row.state() != RunState.RUNNING && row.state() != RunState.PUBLISHING) {
                return new Next.Over();
            }
            return died(run, row);
        });
    }

    private Next died(RunId run, Ledger.Row row) {
        boolean counts = row.lastDeadAttempt() < row.attempt() && !databaseRestartedSince(run, row.attempt());
        int deaths = counts ? count(run) : 0;
        ledger.close(run, row.attempt(), counts ? "DIED" : "LOST", "DIED", "the worker went silent");
        String reason = "attempt " + row.attempt() + " was lost with its worker";
        if (row.state() == RunState.RUNNING && row.cancelRequested()) {
            ledger.leave(run, "CANCELLED", "CANCELLED", reason);
            return new Next.Over();
        }
        if (deaths >= LIMIT) {
            quarantine(run, reason + ", the third in a row");
            return new Next.Over();
        }
        ledger.leave(run, "READY", "DIED", reason);
        return new Next.Again(row.queuedAt());
    }

    private boolean isStill(RunId run, long version) {
        return ledger.jdbc
                .sql("""
                        select version from jobs.scheduled_tasks
                        where task_name = 'run' and task_instance = :instance and version = :version for update""")
                .param("instance", run.toString())
                .param("version", version)
                .query(Long.class)
                .optional()
                .isPresent();
    }

    private int count(RunId run) {
        return ledger.jdbc
                .sql("""
                        update stook.run set deaths = deaths + 1, last_dead_attempt = attempt
                        where id = :run returning deaths""")
                .param("run", run.value())
                .query(Integer.class)
                .single();
    }

    private void quarantine(RunId run, String reason) {
        ledger.jdbc.sql("""
                        update stook.run set state = 'QUARANTINED', reason_code = 'DIED', reason_text = :reason,
                          stage = null, fraction = null
                        where id = :run""").param("reason", reason).param("run", run.value()).update();
    }

    /** A database that has just come back heard nobody's heartbeat for a while: no reason to blame the run. */
    private boolean databaseRestartedSince(RunId run, int attempt) {
        return ledger.jdbc
                .sql(
                        "select started_at < pg_postmaster_start_time() from stook.attempt where run_id = :run and n = :attempt")
                .param("run", run.value())
                .param("attempt", attempt)
                .query(Boolean.class)
                .single();
    }
}
