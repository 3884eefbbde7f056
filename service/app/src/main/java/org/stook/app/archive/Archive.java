package org.stook.app.archive;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Everything that was ever published. */
@Component
public class Archive {
    /**
     * What came since a cursor.
     *
     * @param items in the order of the commits
     * @param next the cursor to come back with, whether or not anything was found
     * @param more whether there is more already
     */
    public record New(List<Holding> items, long next, boolean more) {}

    /** @param publications that were made with them */
    public record SettingsUsed(String id, @Nullable String name, long publications) {}

    private static final String SELECT = """
            select o.seq, p.run_id, p.stack_id, s.subject, s.view_name, t.name, p.name, p.sha256, p.bytes, p.engine_version,
              p.published_at, r.state, (r.score->>'total')::int, r.verdict, r.settings_id
            from stook.publication_order o join stook.publication p on p.run_id = o.run_id join stook.run r on r.id = p.run_id
              join stook.stack s on s.id = p.stack_id join stook.station t on t.id = s.station_id
            """;

    private final JdbcClient jdbc;

    public Archive(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * The newest first, a page at a time.
     *
     * @param before the seq of the last one of the page before, null for the first page
     */
    public List<Holding> find(ArchiveQuery query, @Nullable Long before, int limit) {
        ArchiveQuery.Condition condition = query.condition();
        return jdbc.sql(SELECT + "where o.seq < :before and " + condition.sql() + " order by o.seq desc limit :limit")
                .params(condition.parameters())
                .param("before", before == null ? Long.MAX_VALUE : before)
                .param("limit", limit)
                .query(Archive::holding)
                .list();
    }

    public Optional<Holding> ofRun(long run) {
        return jdbc.sql(SELECT + "where o.run_id = :run")
                .param("run", run)
                .query(Archive::holding)
                .optional();
    }

    /** The newest publication of each stack of the subject that none has superseded, oldest stack first. */
    public List<Holding> ofSubject(String subject) {
        return jdbc.sql(SELECT + "where s.subject = :subject and r.state = 'PUBLISHED' order by p.stack_id, o.seq")
                .param("subject", subject)
                .query(Archive::holding)
                .list();
    }

    /** The number of the newest publication, 0 if there is none. Whoever comes back with it hears of everything later. */
    public long newest() {
        return jdbc.sql("select coalesce(max(seq), 0) from stook.publication_order")
                .query(Long.class)
                .single();
    }

    /**
     * What is new since a cursor. Asked again and again with the {@code next} of the answer before, it gives every publication
     * once: the numbers follow the commits, so nothing can appear later below a number that was already seen.
     *
     * @param after the cursor, 0 for everything
     */
    public New since(long after, ArchiveQuery query, int limit) {
        // First how far, then what: whatever is committed in between waits for the next call.
        long newest = newest();
        ArchiveQuery.Condition condition = query.condition();
        List<Holding> found = jdbc.sql(SELECT + "where o.seq > :after and o.seq <= :newest and " + condition.sql()
                        + " order by o.seq limit :limit")
                .params(condition.parameters())
                .param("after", after)
                .param("newest", newest)
                .param("limit", limit)
                .query(Archive::holding)
                .list();
        boolean full = found.size() == limit;
        long next = full ? found.get(limit - 1).seq() : Math.max(after, newest);
        return new New(found, next, full && next < newest);
    }

    /** The tone settings that publications were made with, the most used first. */
    public List<SettingsUsed> settingsUsed() {
        return jdbc.sql("""
                        select r.settings_id, (select v.name || ', version ' || v.version from stook.tone_settings_version v
                            where v.settings_id = r.settings_id order by v.created_at desc limit 1), count(*)
                        from stook.publication p join stook.run r on r.id = p.run_id group by r.settings_id order by 3 desc, 1 limit 100""")
                .query((row, n) -> new SettingsUsed(row.getString(1), row.getString(2), row.getLong(3)))
                .list();
    }

    private static Holding holding(ResultSet row, int n) throws SQLException {
        return new Holding(
                row.getLong(1),
                row.getLong(2),
                row.getLong(3),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                row.getString(7),
                row.getString(8),
                row.getLong(9),
                row.getString(10),
                row.getObject(11, OffsetDateTime.class).toInstant(),
                row.getString(12),
                row.getObject(13, Integer.class),
                row.getString(14),
                row.getString(15));
    }
}
