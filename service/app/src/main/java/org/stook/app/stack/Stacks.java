package org.stook.app.stack;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Stacks for display. */
@Component
public class Stacks {
    /** A stack, and how its files stand. */
    public record Stack(
            long id,
            String subject,
            String station,
            String state,
            @Nullable String reason,
            boolean onTable,
            Instant createdAt,
            @Nullable Instant sealedAt,
            @Nullable String manifestSha256,
            Files files) {}

    /** How many files of the stack's folder stand where. */
    public record Files(long arriving, long accepted, long setAside) {}

    /**
     * A frame of a sealed stack, or a file that has not become one.
     *
     * @param state role of a frame (SWEEP, STRAY), state of any other file
     */
    public record Item(
            @Nullable Integer ordinal,
            String file,
            String state,
            @Nullable String reason,
            @Nullable Integer width,
            @Nullable Integer height,
            long bytes,
            @Nullable LocalDateTime capturedAt) {}

    /** A file belongs to the collecting stack of its folder until a stack has it as frame. */
    private static final String SELECT = """
            select s.id, s.subject, t.name, s.state, s.reason, s.on_table, s.created_at, s.sealed_at, s.manifest_sha256,
              coalesce(c.arriving, 0),
              case when s.state = 'COLLECTING' then coalesce(c.accepted, 0)
                else (select count(*) from stook.stack_frame f where f.stack_id = s.id and f.role = 'SWEEP') end,
              coalesce(c.bad, 0) + (select count(*) from stook.stack_frame f where f.stack_id = s.id and f.role = 'STRAY')
            from stook.stack s join stook.station t on t.id = s.station_id
            left join lateral (
              select count(*) filter (where f.state in ('SEEN', 'STABLE')) as arriving,
                count(*) filter (where f.state in ('INCOMPLETE', 'REJECTED')) as bad,
                count(*) filter (where f.state = 'ACCEPTED' and not exists (select 1 from stook.stack_frame sf
                  where sf.share_id = f.share_id and sf.rel_path = f.rel_path and sf.sha256 = f.sha256)) as accepted
              from stook.intake_file f where f.share_id = t.intake_share_id and f.missing_since is null
                and starts_with(f.rel_path, s.folder || '/')) c on true
            """;

    private final JdbcClient jdbc;

    public Stacks(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Optional<Stack> find(long id) {
        return stacks(jdbc.sql(SELECT + "where s.id = :id").param("id", id)).stream()
                .findFirst();
    }

    /** The newest first. */
    public List<Stack> latest(int limit) {
        return stacks(jdbc.sql(SELECT + "order by s.id desc limit :limit").param("limit", limit));
    }

    /** Those whose frames are still arriving, the oldest first. */
    public List<Stack> collecting() {
        return stacks(jdbc.sql(SELECT + "where s.state = 'COLLECTING' order by s.id"));
    }

    private static List<Stack> stacks(JdbcClient.StatementSpec statement) {
        return statement
                .query((row, n) -> new Stack(
                        row.getLong(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getBoolean(6),
                        row.getObject(7, OffsetDateTime.class).toInstant(),
                        instant(row.getObject(8, OffsetDateTime.class)),
                        row.getString(9),
                        new Files(row.getLong(10), row.getLong(11), row.getLong(12))))
                .list();
    }

    private static @Nullable Instant instant(@Nullable OffsetDateTime time) {
        return time == null ? null : time.toInstant();
    }

    /** Its frames in order, then what lies in its folder and is no frame of any stack. */
    public List<Item> items(long id) {
        return jdbc.sql("""
                        select sf.ordinal, sf.rel_path, sf.role as state, sf.reason, fr.width, fr.height, fr.bytes, fr.captured_at
                        from stook.stack_frame sf join stook.frame fr on fr.sha256 = sf.sha256 where sf.stack_id = :id
                        union all
                        select null, f.rel_path, f.state, f.reason, fr.width, fr.height, f.size_bytes, fr.captured_at
                        from stook.stack s join stook.station t on t.id = s.station_id
                        join stook.intake_file f on f.share_id = t.intake_share_id and starts_with(f.rel_path, s.folder || '/')
                        left join stook.frame fr on fr.sha256 = f.sha256
                        where s.id = :id and f.missing_since is null and (f.state in ('INCOMPLETE', 'REJECTED')
                          or (s.state = 'COLLECTING' and not exists (select 1 from stook.stack_frame o
                            where o.share_id = f.share_id and o.rel_path = f.rel_path and o.sha256 = f.sha256)))
                        order by 1 nulls last, 2""")
                .param("id", id)
                .query((row, n) -> new Item(
                        row.getObject(1, Integer.class),
                        row.getString(2).substring(row.getString(2).lastIndexOf('/') + 1),
                        row.getString(3),
                        row.getString(4),
                        row.getObject(5, Integer.class),
                        row.getObject(6, Integer.class),
                        row.getLong(7),
                        row.getObject(8, LocalDateTime.class)))
                .list();
    }
}
