package org.stook.app.intake;

import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The frames of a stack and what was seen of them, in order of capture. */
@Component
class SweepFrames {
    /** Looks at what is being shot, so that they are not parsed for every frame that comes; 20 kB each. */
    private static final int KEPT = 600;

    record Frame(
            long file,
            String name,
            boolean kept,
            String sha256,
            @Nullable LocalDateTime captured,
            Look look) {}

    private static final Comparator<Frame> BY_TIME = Comparator.comparing(
                    Frame::captured, Comparator.nullsLast(Comparator.naturalOrder()))
            .thenComparing(Frame::name);

    private record Row(
            long file,
            String name,
            boolean kept,
            Sighting seen,
            @Nullable String sha256,
            @Nullable LocalDateTime captured) {}

    private final JdbcClient jdbc;
    private final EarlyLooks early;
    private final Map<String, Look> looks = new LinkedHashMap<>();

    SweepFrames(JdbcClient jdbc, EarlyLooks early) {
        this.jdbc = jdbc;
        this.early = early;
    }

    /** Those that were accepted and looked at. */
    List<Frame> accepted(long stack) {
        return rows(stack, "'ACCEPTED'").stream()
                .flatMap(row -> looked(row).stream())
                .sorted(BY_TIME)
                .toList();
    }

    /** Those that were looked at, accepted or not; none while an accepted one waits for its look. */
    List<Frame> seen(long stack) {
        List<Frame> frames = new ArrayList<>();
        for (Row row : rows(stack, "'ACCEPTED', 'SEEN', 'STABLE'")) {
            Optional<Frame> frame = row.sha256() == null ? early(row) : looked(row);
            if (frame.isEmpty() && row.sha256() != null) return List.of();
            frame.ifPresent(frames::add);
        }
        frames.sort(BY_TIME);
        return frames;
    }

    private List<Row> rows(long stack, String states) {
        return jdbc.sql("""
                        select f.id, f.rel_path, f.kept, f.size_bytes, f.mtime_ns, f.file_key, f.sha256, fr.captured_at
                        from stook.intake_file f left join stook.frame fr on fr.sha256 = f.sha256
                        where f.stack_id = :stack and f.role = 'FRAME' and f.missing_since is null and f.state in (%s)""".formatted(states))
                .param("stack", stack)
                .query((row, n) -> new Row(
                        row.getLong(1),
                        row.getString(2).substring(row.getString(2).lastIndexOf('/') + 1),
                        row.getBoolean(3),
                        new Sighting(row.getLong(4), row.getLong(5), row.getString(6)),
                        row.getString(7),
                        row.getObject(8, LocalDateTime.class)))
                .list();
    }

    private Optional<Frame> early(Row row) {
        return early.of(row.file(), row.seen())
                .map(glance -> new Frame(
                        row.file(),
                        row.name(),
                        row.kept(),
                        glance.whole().sha256(),
                        glance.facts().time(),
                        glance.look()));
    }

    private Optional<Frame> looked(Row row) {
        String sha256 = Objects.requireNonNull(row.sha256());
        Look look = looks.computeIfAbsent(
                sha256,
                content -> early.of(row.file(), content).or(() -> kept(content)).orElse(null));
        if (looks.size() > KEPT) {
            looks.remove(looks.keySet().iterator().next());
        }
        return Optional.ofNullable(look)
                .map(l -> new Frame(row.file(), row.name(), row.kept(), sha256, row.captured(), l));
    }

    private Optional<Look> kept(String sha256) {
        return jdbc.sql("select survey::text from stook.frame where sha256 = :sha256 and survey is not null")
                .param("sha256", sha256)
                .query(String.class)
                .optional()
                .map(LookJson::read);
    }
}
