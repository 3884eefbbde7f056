package org.stook.orders.attempt;

import java.util.Optional;
import java.util.function.IntSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.TransactionException;
import org.stook.orders.RunId;

/**
 * What attempts at a run found out about where its frames lie. A help and no more: whatever goes wrong with it, the next
 * attempt registers again.
 */
final class Placements {
    private static final Logger LOG = LoggerFactory.getLogger(Placements.class);

    private final Ledger ledger;
    private final JdbcClient jdbc;

    Placements(Ledger ledger) {
        this.ledger = ledger;
        this.jdbc = ledger.jdbc;
    }

    /** What an earlier attempt saved; empty also while the database is away. */
    Optional<String> saved(RunId run) {
        try {
            return ledger.lightly(() -> jdbc.sql("select body from stook.placements where run_id = :run")
                    .param("run", run.value())
                    .query(String.class)
                    .optional());
        } catch (DataAccessException | TransactionException e) {
            LOG.warn("run {}: saved placements cannot be read: {}", run, e.getMessage());
            return Optional.empty();
        }
    }

    /** Behind the fence, like all that an attempt writes. */
    void save(RunId run, int attempt, String body) {
        lightly(
                run,
                () -> jdbc.sql("""
                        insert into stook.placements (run_id, attempt, body)
                        select id, attempt, :body from stook.run where id = :run and attempt = :attempt and state = 'RUNNING'
                        on conflict (run_id) do update set attempt = excluded.attempt, body = excluded.body, saved_at = now()""")
                        .param("body", body)
                        .param("run", run.value())
                        .param("attempt", attempt)
                        .update());
    }

    /** Notes whose placements the attempt goes by. */
    void taken(RunId run, int attempt) {
        lightly(
                run,
                () -> jdbc.sql("""
                        update stook.attempt set placements_of = (select attempt from stook.placements where run_id = :run)
                        where run_id = :run and n = :attempt""")
                        .param("run", run.value())
                        .param("attempt", attempt)
                        .update());
    }

    private void lightly(RunId run, IntSupplier statement) {
        try {
            ledger.<Integer>lightly(statement::getAsInt);
        } catch (DataAccessException | TransactionException e) {
            LOG.warn("run {}: placements are not written down: {}", run, e.getMessage());
        }
    }
}
