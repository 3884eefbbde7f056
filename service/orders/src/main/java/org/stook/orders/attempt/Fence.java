package org.stook.orders.attempt;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.orders.RunId;

/**
 * The attempt number as a fence. A claim raises it; every later write names the number it was given and finds no row once
 * another claim has raised it again. So a worker that was taken for dead and wakes up can publish nothing, whatever it
 * believes. Each call is a transaction of its own and may be repeated, for an answer can get lost.
 */
final class Fence {
    private final Ledger ledger;
    private final JdbcClient jdbc;
    private final Placements placements;

    Fence(Ledger ledger) {
        this.ledger = ledger;
        this.jdbc = ledger.jdbc;
        this.placements = new Placements(ledger);
    }

    Placements placements() {
        return placements;
    }

    /**
     * Tells where the attempt is, for display, and hears whether it may go on.
     *
     * @param stage name of the stage
     * @param fraction of the whole run, 0 to 1
     */
    Standing progress(RunId run, int attempt, String stage, double fraction) {
        // Not in the caller's transaction: its lock on the run would keep the fence's own transaction waiting for ever.
        return ledger.lightly(() -> standing(run, attempt, stage, fraction));
    }

    private Standing standing(RunId run, int attempt, String stage, double fraction) {
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

    long largestOtherWorker() {
        return ledger.within(() ->
                jdbc.sql("""
                        select coalesce(max(memory_bytes), 0) from stook.worker
                        where state in ('ACTIVE', 'PAUSED') and id <> :me""").param("me", ledger.workerId).query(Long.class).single());
    }

    void workedOnBy(RunId run, int attempt, long batchExecutionId) {
        ledger.within(() -> jdbc.sql(
                        "update stook.attempt set batch_execution_id = :batch where run_id = :run and n = :attempt")
                .param("batch", batchExecutionId)
                .param("run", run.value())
                .param("attempt", attempt)
                .update());
    }

    /** The point of no return: from here on the result will be published, by this attempt or by the one that takes over. */
    Standing publishing(RunId run, int attempt, StagedResult result) {
        return ledger.insist(() -> {
            Standing cancel = standing(run, attempt, "publish", 1);
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
    Standing stagedResultLost(RunId run, int attempt) {
        return ledger.insist(() -> validIf(jdbc.sql("""
                        update stook.run set state = 'RUNNING', staged_name = null, result_name = null, result_sha256 = null
                        where id = :run and attempt = :attempt
                          and (state = 'PUBLISHING' or (state = 'RUNNING' and result_sha256 is null))""")
                .param("run", run.value())
                .param("attempt", attempt)
                .update()));
    }

    /** The file stands under its final name: makes it official, and supersedes the publication so far of the stack, whichever version. */
    Standing published(RunId run, int attempt, PublishedResult result) {
        return ledger.insist(() -> {
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
                          and stack_id in (select v.id from stook.run r join stook.stack s on s.id = r.stack_id
                            join stook.stack v on coalesce(v.origin_id, v.id) = coalesce(s.origin_id, s.id)
                            where r.id = :run)
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
