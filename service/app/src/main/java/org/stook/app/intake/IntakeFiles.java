package org.stook.app.intake;

import java.time.LocalDateTime;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.imaging.codec.CaptureTime;
import org.stook.imaging.codec.FrameHeader;

/** The table {@code intake_file} and the frames found in it, in the caller's transaction. */
@Component
class IntakeFiles {
    private final JdbcClient jdbc;

    IntakeFiles(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** All of a folder that were ever seen, by path. */
    Map<String, FileRow> of(long share, String folder) {
        return jdbc
                .sql("""
                        select id, rel_path, size_bytes, mtime_ns, file_key, state, missing_since is not null
                        from stook.intake_file where share_id = :share and starts_with(rel_path, :folder)""")
                .param("share", share)
                .param("folder", folder + "/")
                .query((row, n) -> new FileRow(
                        row.getLong(1),
                        row.getString(2),
                        new Sighting(row.getLong(3), row.getLong(4), row.getString(5)),
                        row.getString(6),
                        row.getBoolean(7)))
                .list()
                .stream()
                .collect(Collectors.toMap(FileRow::path, r -> r, (a, b) -> b, LinkedHashMap::new));
    }

    void add(Stations.Station station, String path, Sighting seen) {
        jdbc.sql("""
                        insert into stook.intake_file (share_id, rel_path, station_id, size_bytes, mtime_ns, file_key)
                        values (:share, :path, :station, :size, :mtime, :key)""")
                .param("share", station.share().id())
                .param("path", path)
                .param("station", station.id())
                .param("size", seen.size())
                .param("mtime", seen.mtime())
                .param("key", seen.key())
                .update();
    }

    /** It looks different: all over again. */
    void changed(FileRow file, Sighting seen) {
        jdbc.sql("""
                        update stook.intake_file set state = 'SEEN', size_bytes = :size, mtime_ns = :mtime, file_key = :key,
                          stable_polls = 0, last_change = now(), missing_since = null, sha256 = null,
                          reason_code = null, reason = null where id = :id""")
                .param("size", seen.size())
                .param("mtime", seen.mtime())
                .param("key", seen.key())
                .param("id", file.id())
                .update();
    }

    void settled(FileRow file, int polls) {
        jdbc.sql("update stook.intake_file set state = 'STABLE', stable_polls = :polls where id = :id")
                .param("polls", polls)
                .param("id", file.id())
                .update();
    }

    void accept(FileRow file, Finding.Whole whole) {
        FrameHeader header = whole.header();
        jdbc.sql("""
                        insert into stook.frame (sha256, bytes, format, width, height, bits, captured_at)
                        values (:sha256, :bytes, :format, :width, :height, :bits, :captured) on conflict do nothing""")
                .param("sha256", whole.sha256())
                .param("bytes", file.seen().size())
                .param("format", header.format())
                .param("width", header.width())
                .param("height", header.height())
                .param("bits", header.bitsPerSample())
                .param("captured", capturedAt(header))
                .update();
        jdbc.sql("update stook.intake_file set state = 'ACCEPTED', sha256 = :sha256 where id = :id")
                .param("sha256", whole.sha256())
                .param("id", file.id())
                .update();
    }

    private static @Nullable LocalDateTime capturedAt(FrameHeader header) {
        return header.capture().time().map(CaptureTime::local).orElse(null);
    }

    /** @param state INCOMPLETE or REJECTED */
    void setAside(FileRow file, String state, String code, String reason) {
        jdbc.sql("update stook.intake_file set state = :state, reason_code = :code, reason = :reason where id = :id")
                .param("state", state)
                .param("code", code)
                .param("reason", reason)
                .param("id", file.id())
                .update();
    }

    void missing(FileRow file, boolean missing) {
        jdbc.sql("update stook.intake_file set missing_since = case when :missing then now() end where id = :id")
                .param("missing", missing)
                .param("id", file.id())
                .update();
    }

    /** Sees to it that a folder has a collecting stack; what it lacked so far may have come. */
    void collect(Stations.Station station, String folder) {
        jdbc.sql("""
                        update stook.stack set reason = null
                        where station_id = :station and folder = :folder and state = 'COLLECTING'""").param("station", station.id()).param("folder", folder).update();
        jdbc.sql("""
                        insert into stook.stack (station_id, subject, folder) select :station, :folder, :folder
                        where not exists (select 1 from stook.stack
                          where station_id = :station and folder = :folder and state = 'COLLECTING')""").param("station", station.id()).param("folder", folder).update();
    }

    /** The collecting stack of a folder, if it has frames that no stack has yet and was not found wanting. */
    @Nullable
    Long ripe(Stations.Station station, String folder) {
        return jdbc.sql("""
                        select s.id from stook.stack s where s.station_id = :station and s.folder = :folder
                          and s.state = 'COLLECTING' and s.reason is null and exists (
                            select 1 from stook.intake_file f where f.share_id = :share and f.state = 'ACCEPTED'
                              and starts_with(f.rel_path, :folder || '/') and f.missing_since is null
                              and not exists (select 1 from stook.stack_frame sf where sf.share_id = f.share_id
                                and sf.rel_path = f.rel_path and sf.sha256 = f.sha256))
                        order by s.id limit 1""")
                .param("station", station.id())
                .param("share", station.share().id())
                .param("folder", folder)
                .query(Long.class)
                .optional()
                .orElse(null);
    }
}
