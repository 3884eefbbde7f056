package org.stook.app.queue;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The workers, and what each is at. */
@Component
public class Crew {
    /**
     * @param state ACTIVE, PAUSED, DRAINING or GONE
     * @param reason why it takes nothing for now
     * @param memoryBytes that it may use, null if it did not say
     * @param silentSeconds since it was last heard of
     * @param task what it works on, null if nothing
     * @param finished runs that it published since midnight UTC
     */
    public record Member(
            String id,
            String host,
            String version,
            String state,
            @Nullable String reason,
            @Nullable Long memoryBytes,
            Instant startedAt,
            Instant lastSeen,
            long silentSeconds,
            long finished,
            @Nullable Task task) {
        /** Workers say every five seconds that they live; four times unheard counts as dead. */
        public boolean silent() {
            return silentSeconds > 20;
        }

        /** The same, but for how far its run is, which open pages are told apart from it. */
        public Member standing() {
            Task still = task == null ? null : new Task(task.run(), task.stackId(), task.subject(), null, 0);
            return new Member(
                    id, host, version, state, reason, memoryBytes, startedAt, lastSeen, silentSeconds, finished, still);
        }
    }

    /** @param fraction of the whole run, 0 to 1 */
    public record Task(
            long run,
            long stackId,
            String subject,
            @Nullable String stage,
            double fraction) {}

    private final JdbcClient jdbc;

    public Crew(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All that are there, and those that took their leave within the last day, by machine. */
    public List<Member> all() {
        return jdbc.sql("""
                        select w.id, w.host, w.version, w.state, w.pause_reason, w.memory_bytes, w.started_at, w.last_seen,
                          extract(epoch from now() - w.last_seen)::bigint,
                          (select count(*) from stook.attempt a where a.worker_id = w.id and a.outcome = 'PUBLISHED'
                            and a.ended_at >= date_trunc('day', now())),
                          r.id, r.stack_id, s.subject, r.stage, coalesce(r.fraction, 0)
                        from stook.worker w
                        left join stook.run r on r.worker_id = w.id and r.state in ('RUNNING', 'PUBLISHING')
                        left join stook.stack s on s.id = r.stack_id
                        where w.state <> 'GONE' or w.last_seen > now() - interval '1 day'
                        order by w.state = 'GONE', w.host, w.id limit 500""")
                .query((row, n) -> new Member(
                        row.getString(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getObject(6, Long.class),
                        row.getObject(7, OffsetDateTime.class).toInstant(),
                        row.getObject(8, OffsetDateTime.class).toInstant(),
                        row.getLong(9),
                        row.getLong(10),
                        row.getString(13) == null
                                ? null
                                : new Task(
                                        row.getLong(11),
                                        row.getLong(12),
                                        row.getString(13),
                                        row.getString(14),
                                        row.getDouble(15))))
                .list();
    }
}
