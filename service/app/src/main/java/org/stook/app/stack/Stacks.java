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
            Files files,
            Standing standing) {}

    /**
     * @param view of the subject, if it is known
     * @param question what a person has to settle before it may be sealed
     * @param version counted from 1
     * @param newest the newest version of it
     */
    public record Standing(@Nullable String view, @Nullable String question, int version, long newest) {}

    /** How many files of the stack's folder stand where. */
    public record Files(long arriving, long accepted, long setAside) {}

    /**
     * A frame of a sealed stack, or a file that has not become one.
     *
     * @param fileId of the file that may be set aside or taken back now, 0 if it may not
     * @param state role of a frame (SWEEP, STRAY), state of any other file
     */
    public record Item(
            long fileId,
            @Nullable Integer ordinal,
            String file,
            String state,
            @Nullable String reason,
            @Nullable Integer width,
            @Nullable Integer height,
            long bytes,
            @Nullable LocalDateTime capturedAt) {}

    private static final String SELECT = """
            select s.id, s.subject, t.name, s.state, s.reason, s.on_table, s.created_at, s.sealed_at, s.manifest_sha256,
              coalesce(c.arriving, 0),
              case when s.state = 'COLLECTING' then coalesce(c.accepted, 0)
                else (select count(*) from stook.stack_frame f where f.stack_id = s.id and f.role = 'SWEEP') end,
              coalesce(c.bad, 0) + case when s.state = 'COLLECTING' then coalesce(c.strays, 0)
                else (select count(*) from stook.stack_frame f where f.stack_id = s.id and f.role = 'STRAY') end,
              s.view_name, s.question, s.version,
              (select v.id from stook.stack v where coalesce(v.origin_id, v.id) = coalesce(s.origin_id, s.id)
                 and (v.state <> 'ASIDE' or v.id = s.id) order by v.version desc limit 1)
            from stook.stack s join stook.station t on t.id = s.station_id
            left join lateral (
              select count(*) filter (where f.state in ('SEEN', 'STABLE')) as arriving,
                count(*) filter (where f.state in ('INCOMPLETE', 'REJECTED')) as bad,
                count(*) filter (where f.state = 'STRAY') as strays,
                count(*) filter (where f.state = 'ACCEPTED' and f.role = 'FRAME') as accepted
              from stook.intake_file f where f.stack_id = s.id and f.missing_since is null) c on true
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

    /** The other views of a stack's subject: stacks under the same name, each in its newest version. */
    public List<Stack> views(long id) {
        return stacks(jdbc.sql(SELECT + """
                        join stook.stack o on o.id = :id and o.subject = s.subject and o.question is null
                          and coalesce(o.origin_id, o.id) <> coalesce(s.origin_id, s.id)
                        where s.state in ('COLLECTING', 'SEALED') and s.question is null order by s.view_name nulls first, s.id""").param("id", id));
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
                        new Files(row.getLong(10), row.getLong(11), row.getLong(12)),
                        new Standing(row.getString(13), row.getString(14), row.getInt(15), row.getLong(16))))
                .list();
    }

    private static @Nullable Instant instant(@Nullable OffsetDateTime time) {
        return time == null ? null : time.toInstant();
    }

    /** Those that wait for a person, the oldest first. */
    public List<Stack> asking() {
        return stacks(jdbc.sql(SELECT + "where s.state = 'COLLECTING' and s.question is not null order by s.id"));
    }

    /** Its frames in order, then what came with it and is no frame. */
    public List<Item> items(long id) {
        return jdbc.sql("""
                        select coalesce((select f.id from stook.intake_file f where f.stack_id = sf.stack_id and f.share_id = sf.share_id
                            and f.rel_path = sf.rel_path and f.sha256 = sf.sha256 and f.role = 'FRAME'), 0),
                          sf.ordinal, sf.rel_path, sf.role as state, sf.reason, fr.width, fr.height, fr.bytes, fr.captured_at
                        from stook.stack_frame sf join stook.frame fr on fr.sha256 = sf.sha256 where sf.stack_id = :id
                        union all
                        select case when f.role = 'FRAME' and f.state in ('ACCEPTED', 'STRAY') then f.id else 0 end, null, f.rel_path,
                          case when f.role <> 'FRAME' and f.state = 'ACCEPTED' then f.role else f.state end,
                          f.reason, fr.width, fr.height, f.size_bytes, fr.captured_at
                        from stook.intake_file f join stook.stack s on s.id = f.stack_id
                        left join stook.frame fr on fr.sha256 = f.sha256
                        where s.id = :id and f.missing_since is null
                          and (f.state in ('INCOMPLETE', 'REJECTED', 'SEEN', 'STABLE') or s.state = 'COLLECTING')
                        order by 2 nulls last, 9 nulls last, 3""")
                .param("id", id)
                .query((row, n) -> new Item(
                        row.getLong(1),
                        row.getObject(2, Integer.class),
                        row.getString(3).substring(row.getString(3).lastIndexOf('/') + 1),
                        row.getString(4),
                        row.getString(5),
                        row.getObject(6, Integer.class),
                        row.getObject(7, Integer.class),
                        row.getLong(8),
                        row.getObject(9, LocalDateTime.class)))
                .list();
    }
}
