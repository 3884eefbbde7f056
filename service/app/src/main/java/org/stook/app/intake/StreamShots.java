package org.stook.app.intake;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.app.sorting.Shot;
import org.stook.app.sorting.Sorter;
import org.stook.imaging.frame.Plane;

/** The frames of a station that lie among those of other stacks, as sorting wants them. */
@Component
class StreamShots {
    /** What a shot is in the database now. @param stack null while it has none */
    record Row(@Nullable Long stack, String role, boolean named) {}

    /**
     * @param shots all accepted frames of stacks that are not sealed, as far as they were looked at
     * @param rows of these, by file
     * @param unseen capture times of those not looked at yet, by camera
     */
    record Pending(List<Shot> shots, Map<Long, Row> rows, Map<String, LocalDateTime> unseen) {}

    private static final String COLUMNS = """
            select f.id, regexp_replace(f.rel_path, '^.*/', ''), fr.captured_at, f.mtime_ns, coalesce(fr.meta->>'camera', ''),
              coalesce(fr.meta->>'exposure', ''), fr.width, fr.height, f.kept, fr.sha256, f.stack_id, f.role, coalesce(s.named, false)
            """;

    private final JdbcClient jdbc;
    /** Sights of what is pending, so that they are not parsed at every poll. */
    private final Map<String, Shot.Sight> sights = new HashMap<>();

    StreamShots(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Pending pending(Stations.Station station, String folder) {
        List<Shot> shots = new ArrayList<>();
        Map<Long, Row> rows = new HashMap<>();
        Map<String, LocalDateTime> unseen = new HashMap<>();
        jdbc.sql(COLUMNS + """
                        from stook.intake_file f join stook.frame fr on fr.sha256 = f.sha256
                        left join stook.stack s on s.id = f.stack_id
                        where f.share_id = :share and f.state = 'ACCEPTED' and f.role in ('FRAME', 'SLATE') and f.missing_since is null
                          and (f.stack_id is null or s.state = 'COLLECTING' and s.folder is null)
                          and case when :folder = '' then position('/' in f.rel_path) = 0
                                else starts_with(f.rel_path, :folder || '/') end
                        order by f.id""")
                .param("share", station.share().id())
                .param("folder", folder)
                .query(row -> {
                    Shot shot = shot(row);
                    if (shot == null) {
                        unseen.merge(row.getString(5), time(row), (a, b) -> a.isBefore(b) ? a : b);
                    } else {
                        shots.add(shot);
                        rows.put(
                                shot.file(),
                                new Row(row.getObject(11, Long.class), row.getString(12), row.getBoolean(13)));
                    }
                });
        return new Pending(shots, rows, unseen);
    }

    /** The sealed stacks of a camera whose sweeps lie within a time, and not for long: those that loose shots may belong to. */
    List<Sorter.Sealed> sealed(Stations.Station station, String camera, LocalDateTime from, LocalDateTime to) {
        Map<Long, List<Shot>> sweeps = new LinkedHashMap<>();
        jdbc.sql(COLUMNS + """
                        from stook.stack s join stook.stack_frame sf on sf.stack_id = s.id and sf.role = 'SWEEP'
                        join stook.frame fr on fr.sha256 = sf.sha256
                        join stook.intake_file f on f.share_id = sf.share_id and f.rel_path = sf.rel_path and f.stack_id = s.id
                        where s.station_id = :station and s.state = 'SEALED' and s.sealed_at > now() - interval '2 days'
                          and s.folder is null and fr.survey is not null and coalesce(fr.meta->>'camera', '') = :camera
                          and fr.captured_at between :from and :to
                        order by s.id, fr.captured_at, f.id""")
                .param("station", station.id())
                .param("camera", camera)
                .param("from", from)
                .param("to", to)
                .query(row -> {
                    Shot shot = shot(row);
                    if (shot != null) {
                        sweeps.computeIfAbsent(row.getLong(11), s -> new ArrayList<>())
                                .add(shot);
                    }
                });
        return sweeps.entrySet().stream()
                .map(e -> new Sorter.Sealed(e.getKey(), e.getValue()))
                .toList();
    }

    private @Nullable Shot shot(ResultSet row) throws SQLException {
        String sha256 = row.getString(10);
        Shot.Sight sight = sights.computeIfAbsent(sha256, this::sight);
        if (sight == null) {
            return null;
        }
        return new Shot(
                row.getLong(1),
                row.getString(2),
                time(row),
                new Shot.Setting(row.getString(5), row.getInt(7) + " x " + row.getInt(8), row.getString(6)),
                sight,
                row.getBoolean(9));
    }

    private static LocalDateTime time(ResultSet row) throws SQLException {
        LocalDateTime captured = row.getObject(3, LocalDateTime.class);
        long nanos = row.getLong(4);
        return captured != null
                ? captured
                : LocalDateTime.ofEpochSecond(
                        Math.floorDiv(nanos, 1_000_000_000L),
                        (int) Math.floorMod(nanos, 1_000_000_000L),
                        ZoneOffset.UTC);
    }

    private Shot.@Nullable Sight sight(String sha256) {
        return jdbc.sql("select survey::text from stook.frame where sha256 = :sha256 and survey is not null")
                .param("sha256", sha256)
                .query(String.class)
                .optional()
                .map(text -> {
                    Look look = LookJson.read(text);
                    Plane thumbnail = look.survey().thumbnail();
                    return new Shot.Sight(
                            java.util.Arrays.copyOf(thumbnail.samples(), thumbnail.width() * thumbnail.height()),
                            look.reading().codes().stream()
                                    .map(code -> new Shot.Code(code.symbology(), code.text()))
                                    .toList(),
                            look.reading().unread(),
                            Look.blank(look.survey().exposure()));
                })
                .orElse(null);
    }

    /** Forgets what nobody has asked for lately: all, when it has become much. */
    void forget() {
        if (sights.size() > 5000) {
            sights.clear();
        }
    }
}
