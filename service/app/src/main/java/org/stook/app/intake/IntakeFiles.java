package org.stook.app.intake;

import java.sql.Types;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.imaging.codec.FrameHeader;

/** The table {@code intake_file} and the frames found in it, in the caller's transaction. */
@Component
class IntakeFiles {
    private final JdbcClient jdbc;

    IntakeFiles(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Those of a folder that were ever seen, by path. @param folder empty for the files right at the share's root */
    Map<String, FileRow> of(long share, String folder) {
        return jdbc
                .sql("""
                        select id, rel_path, size_bytes, mtime_ns, file_key, state, coalesce(reason_code, ''), missing_since is not null
                        from stook.intake_file where share_id = :share
                          and case when :folder = '' then position('/' in rel_path) = 0 else starts_with(rel_path, :folder || '/') end""")
                .param("share", share)
                .param("folder", folder)
                .query((row, n) -> new FileRow(
                        row.getLong(1),
                        row.getString(2),
                        new Sighting(row.getLong(3), row.getLong(4), row.getString(5)),
                        new FileRow.Standing(row.getString(6), row.getString(7), row.getBoolean(8))))
                .list()
                .stream()
                .collect(Collectors.toMap(FileRow::path, r -> r, (a, b) -> b, LinkedHashMap::new));
    }

    /** @param stack that it belongs to, null while that is not known */
    void add(Stations.Station station, String path, Sighting seen, @Nullable Long stack) {
        jdbc.sql("""
                        insert into stook.intake_file (share_id, rel_path, station_id, size_bytes, mtime_ns, file_key, stack_id)
                        values (:share, :path, :station, :size, :mtime, :key, :stack)""")
                .param("share", station.share().id())
                .param("path", path)
                .param("station", station.id())
                .param("size", seen.size())
                .param("mtime", seen.mtime())
                .param("key", seen.key())
                .param("stack", stack, Types.BIGINT)
                .update();
    }

    /** It looks different: all over again, and to be sorted anew where its stack is not fixed. */
    void changed(FileRow file, Sighting seen) {
        jdbc.sql("""
                        update stook.intake_file set state = 'SEEN', size_bytes = :size, mtime_ns = :mtime, file_key = :key,
                          stable_polls = 0, last_change = now(), missing_since = null, sha256 = null, role = 'FRAME', kept = false,
                          stack_id = (select s.id from stook.stack s
                            where s.id = stack_id and not (s.state = 'COLLECTING' and s.folder is null)),
                          reason_code = null, reason = null where id = :id""")
                .param("size", seen.size())
                .param("mtime", seen.mtime())
                .param("key", seen.key())
                .param("id", file.id())
                .update();
    }

    /** To be examined again as it is, for something beside it has changed. */
    void again(FileRow file) {
        changed(file, file.seen());
    }

    void settled(FileRow file, int polls) {
        jdbc.sql("update stook.intake_file set state = 'STABLE', stable_polls = :polls where id = :id")
                .param("polls", polls)
                .param("id", file.id())
                .update();
    }

    /** @param clocks what the station's settings add to a camera's time */
    void accept(FileRow file, Finding.Whole whole, Map<String, Duration> clocks) {
        FrameHeader header = whole.header();
        CaptureFacts facts = CaptureFacts.of(header.capture(), clocks);
        jdbc.sql("""
                        insert into stook.frame (sha256, bytes, format, width, height, bits, captured_at, meta)
                        values (:sha256, :bytes, :format, :width, :height, :bits, :captured,
                          jsonb_build_object('camera', cast(:camera as text), 'exposure', cast(:exposure as text)))
                        on conflict do nothing""")
                .param("sha256", whole.sha256())
                .param("bytes", file.seen().size())
                .param("format", header.format())
                .param("width", header.width())
                .param("height", header.height())
                .param("bits", header.bitsPerSample())
                .param("captured", facts.time())
                .param("camera", facts.camera())
                .param("exposure", facts.exposure())
                .update();
        jdbc.sql("update stook.intake_file set state = 'ACCEPTED', sha256 = :sha256 where id = :id")
                .param("sha256", whole.sha256())
                .param("id", file.id())
                .update();
    }

    /** Keeps a raw file beside the picture of the same capture, whatever stack that belongs to. */
    void keepRaw(FileRow file, String sha256, FileRow picture) {
        jdbc.sql("""
                        insert into stook.frame (sha256, bytes, format, width, height, bits, captured_at, meta, survey)
                        select :sha256, :bytes, 'raw', p.width, p.height, p.bits, p.captured_at, p.meta, '{}'
                        from stook.intake_file f join stook.frame p on p.sha256 = f.sha256 where f.id = :picture
                        on conflict do nothing""")
                .param("sha256", sha256)
                .param("bytes", file.seen().size())
                .param("picture", picture.id())
                .update();
        jdbc.sql("""
                        update stook.intake_file f set state = 'ACCEPTED', role = 'RAW', sha256 = :sha256,
                          stack_id = (select p.stack_id from stook.intake_file p where p.id = :picture) where f.id = :id""")
                .param("sha256", sha256)
                .param("picture", picture.id())
                .param("id", file.id())
                .update();
    }

    /**
     * The picture of a capture whose raw file is a frame already takes its place; in a sealed stack the raw file stays the frame and
     * the picture is set aside.
     *
     * @param other what of the same capture was accepted before
     * @return whether the picture is taken in
     */
    boolean preferPicture(FileRow picture, FileRow other) {
        int raw = jdbc.sql("""
                        update stook.intake_file r set role = 'RAW' from stook.frame f
                        where r.id = :raw and r.state = 'ACCEPTED' and r.role = 'FRAME' and f.sha256 = r.sha256 and f.format = 'raw'
                          and not exists (select 1 from stook.stack s where s.id = r.stack_id and s.state <> 'COLLECTING')""").param("raw", other.id()).update();
        return raw == 1
                || jdbc.sql("""
                            update stook.intake_file p set state = 'STRAY', reason_code = 'RAW_IN_USE', reason = :reason
                            from stook.intake_file r join stook.frame f on f.sha256 = r.sha256
                            where p.id = :picture and r.id = :raw and r.state = 'ACCEPTED' and r.role = 'FRAME' and f.format = 'raw'""")
                                .param("picture", picture.id())
                                .param("raw", other.id())
                                .param(
                                        "reason",
                                        picture.path() + ": came when the raw file of the same capture, " + other.path()
                                                + ", was in its sealed stack already; set aside")
                                .update()
                        == 0;
    }

    /** @param state INCOMPLETE or REJECTED */
    void setAside(FileRow file, String state, Finding.Refused why) {
        jdbc.sql("update stook.intake_file set state = :state, reason_code = :code, reason = :reason where id = :id")
                .param("state", state)
                .param("code", why.code())
                .param("reason", why.reason())
                .param("id", file.id())
                .update();
    }

    void missing(FileRow file, boolean gone) {
        jdbc.sql("update stook.intake_file set missing_since = case when :gone then now() end where id = :id")
                .param("gone", gone)
                .param("id", file.id())
                .update();
    }
}
