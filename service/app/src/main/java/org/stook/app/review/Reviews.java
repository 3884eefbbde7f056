package org.stook.app.review;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.orders.Actor;

/** What people made of composites: accepted, or sent back with a reason. */
@Component
public class Reviews {
    private static final int LONGEST_REASON = 500;

    /** The newest verdict on a run. */
    public record Review(
            long run, boolean accepted, @Nullable String reason, String actor, Instant at) {}

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;

    Reviews(JdbcClient jdbc, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    public Optional<Review> of(long run) {
        return jdbc.sql("select run_id, verdict, reason, actor, at from stook.review where run_id = :run"
                        + " order by id desc limit 1")
                .param("run", run)
                .query((row, n) -> new Review(
                        row.getLong(1),
                        row.getString(2).equals("ACCEPTED"),
                        row.getString(3),
                        row.getString(4),
                        row.getObject(5, OffsetDateTime.class).toInstant()))
                .optional();
    }

    /** @return whether there is such a publication; its audit entry is written with it */
    public boolean accept(long run, String actor) {
        return write(run, "ACCEPTED", "", actor);
    }

    /**
     * @param reason for whoever makes it again
     * @throws IllegalArgumentException if the reason is empty or too long
     */
    public boolean sendBack(long run, String reason, String actor) {
        if (reason.isBlank() || reason.length() > LONGEST_REASON) {
            throw new IllegalArgumentException("a reason for sending back: found %d characters, expected 1 to %d"
                    .formatted(reason.strip().length(), LONGEST_REASON));
        }
        return write(run, "SENT_BACK", reason.strip(), actor);
    }

    private boolean write(long run, String verdict, String reason, String actor) {
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            return jdbc.sql("""
                                    insert into stook.review (run_id, verdict, reason)
                                    select run_id, :verdict, nullif(:reason, '') from stook.publication where run_id = :run""")
                            .param("verdict", verdict)
                            .param("reason", reason)
                            .param("run", run)
                            .update()
                    == 1;
        }));
    }
}
