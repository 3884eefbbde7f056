package org.stook.orders;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;

/** Who works: the processes that announced themselves, and when each was last heard of, by the database's clock. */
public final class Workers {
    /** What a process says of itself at its start. */
    public record Announcement(
            String id, String host, long pid, String version, int schemaMin, int schemaMax, long memoryBytes) {}

    public enum State {
        ACTIVE,
        PAUSED,
        DRAINING,
        GONE
    }

    /** As shown to the operator. */
    public record Worker(
            String id,
            String host,
            String version,
            State state,
            @Nullable String pauseReason,
            Instant lastSeen) {}

    private final JdbcClient jdbc;

    public Workers(DataSource source) {
        this.jdbc = JdbcClient.create(source);
    }

    /** Registers the process, or renews its entry. */
    public void announce(Announcement worker) {
        jdbc.sql("""
                        insert into stook.worker (id, host, pid, version, schema_min, schema_max, memory_bytes)
                        values (:id, :host, :pid, :version, :schemaMin, :schemaMax, :memoryBytes)
                        on conflict (id) do update set host = excluded.host, pid = excluded.pid, version = excluded.version,
                          schema_min = excluded.schema_min, schema_max = excluded.schema_max,
                          memory_bytes = excluded.memory_bytes, state = 'ACTIVE', pause_reason = null,
                          started_at = now(), last_seen = now()""").paramSource(worker).update();
    }

    /** Says that the process lives, and how. */
    public void seen(String id, State state, @Nullable String pauseReason, long freeBytes) {
        jdbc.sql("""
                        update stook.worker set state = :state, pause_reason = :reason, free_bytes = :free, last_seen = now()
                        where id = :id""")
                .param("id", id)
                .param("state", state.name())
                .param("reason", pauseReason)
                .param("free", freeBytes)
                .update();
    }

    /** All that did not take their leave, the longest silent last. */
    public List<Worker> present() {
        return jdbc.sql("""
                        select id, host, version, state, pause_reason, last_seen from stook.worker
                        where state <> 'GONE' order by last_seen desc, id""")
                .query((row, n) -> new Worker(
                        row.getString(1),
                        row.getString(2),
                        row.getString(3),
                        State.valueOf(row.getString(4)),
                        row.getString(5),
                        row.getObject(6, OffsetDateTime.class).toInstant()))
                .list();
    }

    /** The newest migration the database has had; a worker outside of its own range pauses itself. */
    public int schemaVersion() {
        return jdbc.sql("""
                        select coalesce(max(version::int), 0) from stook.flyway_schema_history
                        where success and version is not null""").query(Integer.class).single();
    }
}
