package org.stook.app.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;
import tools.jackson.databind.json.JsonMapper;

/** What somebody fetches again and again, and how far they are. */
@Component
public class Pulls {
    /**
     * @param filter what is fetched
     * @param taken they have everything up to this number
     * @param waiting how many publications are newer, whatever the filter
     */
    public record Pull(
            String name,
            ArchiveQuery filter,
            long taken,
            long waiting,
            String createdBy,
            @Nullable Instant takenAt) {}

    private static final String SELECT = """
            select name, filter::text, taken_seq, (select coalesce(max(seq), 0) from stook.publication_order) - taken_seq,
              created_by, taken_at from stook.pull
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final TransactionOperations transaction;
    private final AuditTrail audit;

    public Pulls(JdbcClient jdbc, JsonMapper json, TransactionOperations transaction, AuditTrail audit) {
        this.jdbc = jdbc;
        this.json = json;
        this.transaction = transaction;
        this.audit = audit;
    }

    public List<Pull> all() {
        return jdbc.sql(SELECT + "order by name").query(this::pull).list();
    }

    public Optional<Pull> find(String name) {
        return jdbc.sql(SELECT + "where name = :name")
                .param("name", name)
                .query(this::pull)
                .optional();
    }

    /**
     * Saves a pull, or gives one of that name another filter; how far it is stays.
     *
     * @throws IllegalArgumentException if the name is not plain
     */
    public void save(String name, ArchiveQuery filter, String actor) {
        if (!name.matches("[a-z0-9][a-z0-9-]{0,59}")) {
            throw new IllegalArgumentException(
                    "found '" + name + "', expected a name of small letters, digits and dashes, 60 at most");
        }
        acting(actor, () -> {
            jdbc.sql("""
                            insert into stook.pull (name, filter, created_by) values (:name, cast(:filter as jsonb), stook.actor())
                            on conflict (name) do update set filter = excluded.filter""")
                    .param("name", name)
                    .param("filter", json.writeValueAsString(filter))
                    .update();
            audit.write("pull.SAVED", "pull/" + name);
        });
    }

    /**
     * Notes that everything up to a number is taken. Saying it twice, or late, does no harm: it never goes back.
     *
     * @return whether there is such a pull, and such a number
     */
    public boolean taken(String name, long upTo, String actor) {
        return Boolean.TRUE.equals(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            int rows = jdbc.sql("""
                            update stook.pull set taken_seq = greatest(taken_seq, :upTo), taken_at = now()
                            where name = :name and :upTo between 0 and (select coalesce(max(seq), 0) from stook.publication_order)""").param("name", name).param("upTo", upTo).update();
            if (rows == 1) audit.write("pull.TAKEN-" + upTo, "pull/" + name);
            return rows == 1;
        }));
    }

    private void acting(String actor, Runnable act) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, actor);
            act.run();
        });
    }

    private Pull pull(ResultSet row, int n) throws SQLException {
        OffsetDateTime takenAt = row.getObject(6, OffsetDateTime.class);
        return new Pull(
                row.getString(1),
                json.readValue(row.getString(2), ArchiveQuery.class),
                row.getLong(3),
                row.getLong(4),
                row.getString(5),
                takenAt == null ? null : takenAt.toInstant());
    }
}
