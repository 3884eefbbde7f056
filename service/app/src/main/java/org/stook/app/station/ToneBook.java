package org.stook.app.station;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The sets of tone settings, known by their content, and where each was used. */
@Component
public class ToneBook {
    private static final int MOST = 200;

    /**
     * @param id SHA-256 of the canonical JSON
     * @param stations whose new runs start with it now
     * @param runs ordered with it
     * @param published of these
     */
    public record Tones(
            String id,
            Instant createdAt,
            String stations,
            long runs,
            long published,
            @Nullable Instant lastUsed) {
        public String shortId() {
            return id.substring(0, 12);
        }
    }

    /** @param members by their full names such as tone.contrast, with their values as JSON */
    public record Detail(Tones tones, String body, Map<String, String> members) {}

    /** A version of a station's settings that has this set of tones. */
    public record Version(
            String station, int version, @Nullable String note, String createdBy, Instant createdAt) {}

    /** A run that was ordered with it. */
    public record Use(
            long run,
            long stackId,
            String subject,
            String station,
            String state,
            @Nullable Integer score,
            Instant at) {}

    private static final String SELECT = """
            select t.id, t.created_at, coalesce((select string_agg(s.name, ', ' order by s.name) from stook.station s
                where s.active and s.tone_settings_id = t.id), ''),
              coalesce(u.runs, 0), coalesce(u.published, 0), u.last
            from stook.tone_settings t left join (
              select settings_id, count(*) as runs, count(*) filter (where state in ('PUBLISHED', 'SUPERSEDED')) as published,
                max(created_at) as last from stook.run where :id = '' or settings_id = :id group by settings_id) u on u.settings_id = t.id
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json = JsonMapper.builder().build();

    ToneBook(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The last used first. */
    public List<Tones> all() {
        return tones(jdbc.sql(SELECT + "order by coalesce(u.last, t.created_at) desc, t.id limit " + MOST)
                .param("id", ""));
    }

    public Optional<Detail> find(String id) {
        return tones(jdbc.sql(SELECT + "where t.id = :id").param("id", id)).stream()
                .findFirst()
                .map(tones -> {
                    JsonNode body = json.readTree(jdbc.sql("select body::text from stook.tone_settings where id = :id")
                            .param("id", id)
                            .query(String.class)
                            .single());
                    Map<String, String> members = new TreeMap<>();
                    flatten("", body, members);
                    return new Detail(tones, body.toPrettyString(), members);
                });
    }

    private static void flatten(String path, JsonNode node, Map<String, String> into) {
        if (!node.isObject()) {
            into.put(path, node.toString());
            return;
        }
        for (String name : node.propertyNames()) {
            flatten(path.isEmpty() ? name : path + "." + name, node.get(name), into);
        }
    }

    public List<Version> versions(String id) {
        return jdbc.sql("""
                        select s.name, v.version, v.note, v.created_by, v.created_at from stook.station_settings v
                        join stook.station s on s.id = v.station_id join stook.tone_settings t on t.id = :id
                        where coalesce(v.body -> 'recipe', '{}') = t.body order by v.created_at desc limit 50""")
                .param("id", id)
                .query((row, n) -> new Version(
                        row.getString(1),
                        row.getInt(2),
                        row.getString(3),
                        row.getString(4),
                        row.getObject(5, OffsetDateTime.class).toInstant()))
                .list();
    }

    /** The newest first. @param before run to go on below, {@link Long#MAX_VALUE}: from the newest */
    public List<Use> uses(String id, long before, int limit) {
        return jdbc.sql("""
                        select r.id, s.id, s.subject, t.name, r.state, (r.score ->> 'total')::int, r.created_at
                        from stook.run r join stook.stack s on s.id = r.stack_id join stook.station t on t.id = s.station_id
                        where r.settings_id = :id and r.id < :before order by r.id desc limit :limit""")
                .param("id", id)
                .param("before", before)
                .param("limit", limit)
                .query((row, n) -> new Use(
                        row.getLong(1),
                        row.getLong(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getObject(6, Integer.class),
                        row.getObject(7, OffsetDateTime.class).toInstant()))
                .list();
    }

    private static List<Tones> tones(JdbcClient.StatementSpec statement) {
        return statement
                .query((row, n) -> {
                    OffsetDateTime last = row.getObject(6, OffsetDateTime.class);
                    return new Tones(
                            row.getString(1),
                            row.getObject(2, OffsetDateTime.class).toInstant(),
                            row.getString(3),
                            row.getLong(4),
                            row.getLong(5),
                            last == null ? null : last.toInstant());
                })
                .list();
    }
}
