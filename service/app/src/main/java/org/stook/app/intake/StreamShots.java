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
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.app.sorting.Shot;
import org.stook.app.sorting.Sorter;
import org.stook.imaging.codec.FrameHeader;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.survey.FrameSurvey;

/** The frames of a station that lie among those of other stacks, as sorting wants them. */
@Component
class StreamShots {
    /**
     * What a shot is in the database now.
     *
     * @param stack null while it has none
     * @param accepted whether its file has settled and was read to its end
     */
    record Row(@Nullable Long stack, String role, boolean accepted) {}

    /**
     * @param shots all frames of stacks that are not sealed, as far as they were looked at
     * @param rows of these, by file
     * @param unseen capture times of the accepted ones not looked at yet, by camera
     */
    record Pending(List<Shot> shots, Map<Long, Row> rows, Map<String, LocalDateTime> unseen) {}

    private static final String COLUMNS = """
            select f.id, regexp_replace(f.rel_path, '^.*/', ''), fr.captured_at, f.mtime_ns, coalesce(fr.meta->>'camera', ''),
              coalesce(fr.meta->>'exposure', ''), fr.width, fr.height, f.kept, fr.sha256, f.stack_id, f.role,
              f.size_bytes, f.file_key
            """;

    private final JdbcClient jdbc;
    private final EarlyLooks early;
    /** Sights of what is pending, so that they are not parsed at every poll. */
    private final Map<String, Shot.Sight> sights = new HashMap<>();

    StreamShots(JdbcClient jdbc, EarlyLooks early) {
        this.jdbc = jdbc;
        this.early = early;
    }

    Pending pending(Stations.Station station, String folder) {
        List<Shot> shots = new ArrayList<>();
        Map<Long, Row> rows = new HashMap<>();
        Map<String, LocalDateTime> unseen = new HashMap<>();
        jdbc.sql(COLUMNS + """
                        from stook.intake_file f left join stook.frame fr on fr.sha256 = f.sha256
                        left join stook.stack s on s.id = f.stack_id
                        where f.share_id = :share and f.state in ('ACCEPTED', 'SEEN', 'STABLE')
                          and f.role in ('FRAME', 'SLATE') and f.missing_since is null
                          and (f.stack_id is null or s.state = 'COLLECTING' and s.folder is null)
                          and case when :folder = '' then position('/' in f.rel_path) = 0
                                else starts_with(f.rel_path, :folder || '/') end
                        order by f.id""")
                .param("share", station.share().id())
                .param("folder", folder)
                .query(row -> {
                    boolean accepted = row.getString(10) != null;
                    Shot shot = accepted ? shot(row) : early(row);
                    if (shot == null && accepted) {
                        unseen.merge(row.getString(5), time(row), (a, b) -> a.isBefore(b) ? a : b);
                    } else if (shot != null) {
                        shots.add(shot);
                        rows.put(shot.file(), new Row(row.getObject(11, Long.class), row.getString(12), accepted));
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
        long file = row.getLong(1);
        Shot.Sight sight = sights.computeIfAbsent(
                sha256,
                content -> early.of(file, content)
                        .or(() -> look(content))
                        .map(StreamShots::sight)
                        .orElse(null));
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

    /** Of a file that has not settled, if it was looked at as it is. */
    private @Nullable Shot early(ResultSet row) throws SQLException {
        Sighting seen = new Sighting(row.getLong(13), row.getLong(4), row.getString(14));
        EarlyLooks.Glance glance = early.of(row.getLong(1), seen).orElse(null);
        if (glance == null) {
            return null;
        }
        FrameHeader header = glance.whole().header();
        CaptureFacts facts = glance.facts();
        return new Shot(
                row.getLong(1),
                row.getString(2),
                facts.time() == null ? time(row) : facts.time(),
                new Shot.Setting(facts.camera(), header.width() + " x " + header.height(), facts.exposure()),
                sight(glance.look()),
                row.getBoolean(9));
    }

    private Optional<Look> look(String sha256) {
        return jdbc.sql("select survey::text from stook.frame where sha256 = :sha256 and survey is not null")
                .param("sha256", sha256)
                .query(String.class)
                .optional()
                .map(LookJson::read);
    }

    private static Shot.Sight sight(Look look) {
        Plane thumbnail = look.survey().thumbnail();
        return new Shot.Sight(
                java.util.Arrays.copyOf(thumbnail.samples(), thumbnail.width() * thumbnail.height()),
                sharpness(look.survey()),
                look.reading().codes().stream()
                        .map(code -> new Shot.Code(code.symbology(), code.text()))
                        .toList(),
                look.reading().unread(),
                Look.blank(look.survey().exposure()));
    }

    private static float[] sharpness(FrameSurvey survey) {
        double floor = 0;
        for (int k = 0; k < survey.floors().length; k++) floor += survey.floors()[k] / (1 << k);
        float[] logs = new float[survey.tiles()];
        for (int t = 0; t < logs.length; t++) logs[t] = (float) Math.log(survey.sharpness(t) + floor);
        return logs;
    }

    /** Forgets what nobody has asked for lately: all, when it has become much. */
    void forget() {
        if (sights.size() > 5000) {
            sights.clear();
        }
    }
}
