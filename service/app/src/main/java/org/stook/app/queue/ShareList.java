package org.stook.app.queue;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The shares, how each stands, and what hangs on it. */
@Component
public class ShareList {
    /**
     * @param kind INTAKE or PUBLISH
     * @param state OK, GONE, FULL or READ_ONLY
     * @param reason why it is not as it should be
     * @param freeBytes as last measured, null if never
     * @param stations that take frames from it or publish to it
     * @param waiting runs that would publish to it
     */
    public record Share(
            String name,
            String kind,
            String root,
            String state,
            @Nullable String reason,
            Instant since,
            @Nullable Long freeBytes,
            @Nullable Long totalBytes,
            String stations,
            long waiting) {}

    private final JdbcClient jdbc;

    public ShareList(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Those in trouble first. */
    public List<Share> all() {
        return jdbc.sql("""
                        select h.name, h.kind, h.root, h.state, h.state_text, h.changed_at, m.free_bytes, m.total_bytes,
                          coalesce((select string_agg(t.name, ', ' order by t.name) from stook.station t
                            where t.active and h.id in (t.intake_share_id, t.publish_share_id)), ''),
                          (select count(*) from stook.run r join stook.stack s on s.id = r.stack_id
                            join stook.station t on t.id = s.station_id
                            where r.state = 'READY' and coalesce(t.publish_share_id, t.intake_share_id) = h.id)
                        from stook.share h
                        left join lateral (select free_bytes, total_bytes from stook.share_room
                          where share_id = h.id order by at desc limit 1) m on true
                        order by h.state = 'OK', h.name""")
                .query((row, n) -> new Share(
                        row.getString(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getObject(6, OffsetDateTime.class).toInstant(),
                        row.getObject(7, Long.class),
                        row.getObject(8, Long.class),
                        row.getString(9),
                        row.getLong(10)))
                .list();
    }
}
