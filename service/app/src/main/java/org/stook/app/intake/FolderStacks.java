package org.stook.app.intake;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.app.stack.Versions;

/** Stacks that are folders: all that lies in one subfolder of a station's folder. In the caller's transaction. */
@Component
class FolderStacks {
    private final JdbcClient jdbc;
    private final Versions versions;

    FolderStacks(JdbcClient jdbc, Versions versions) {
        this.jdbc = jdbc;
        this.versions = versions;
    }

    /** The stack of a folder, the collecting one before any other; begins one if there is none. What it lacked may have come. */
    long of(Stations.Station station, String folder) {
        jdbc.sql("update stook.stack set reason = null"
                        + " where station_id = :station and folder = :folder and state = 'COLLECTING'")
                .param("station", station.id())
                .param("folder", folder)
                .update();
        return jdbc.sql("""
                        select id from stook.stack where station_id = :station and folder = :folder
                        order by state = 'COLLECTING' desc, id desc limit 1""")
                .param("station", station.id())
                .param("folder", folder)
                .query(Long.class)
                .optional()
                .orElseGet(() -> begin(station, folder));
    }

    private long begin(Stations.Station station, String folder) {
        return jdbc.sql(
                        "insert into stook.stack (station_id, subject, folder) values (:station, :folder, :folder) returning id")
                .param("station", station.id())
                .param("folder", folder)
                .query(Long.class)
                .single();
    }

    /** A frame was accepted: if its stack is sealed already, it belongs to the next version. */
    void joined(FileRow file) {
        Optional<Long> over =
                jdbc.sql("""
                        select s.id from stook.intake_file f join stook.stack s on s.id = f.stack_id
                        where f.id = :file and s.state <> 'COLLECTING'""").param("file", file.id()).query(Long.class).optional();
        over.ifPresent(versions::open);
    }

    /** Of a folder, the stack that still takes frames. */
    Optional<Long> collecting(Stations.Station station, String folder) {
        return jdbc.sql("select id from stook.stack where station_id = :station and folder = :folder"
                        + " and state = 'COLLECTING' order by id limit 1")
                .param("station", station.id())
                .param("folder", folder)
                .query(Long.class)
                .optional();
    }

    /** The collecting stack of a folder, if all its frames were looked at and it was not found wanting. */
    @Nullable
    Long ripe(Stations.Station station, String folder) {
        return jdbc.sql("""
                        select s.id from stook.stack s where s.station_id = :station and s.folder = :folder
                          and s.state = 'COLLECTING' and s.reason is null and s.question is null and exists (
                            select 1 from stook.intake_file f where f.stack_id = s.id and f.state = 'ACCEPTED' and f.role = 'FRAME'
                              and f.missing_since is null)
                        order by s.id limit 1""")
                .param("station", station.id())
                .param("folder", folder)
                .query(Long.class)
                .optional()
                .orElse(null);
    }

    /** Whether a frame of the stack was not looked at yet. */
    boolean unseen(long stack) {
        return jdbc.sql("""
                        select exists (select 1 from stook.intake_file f join stook.frame fr on fr.sha256 = f.sha256
                          where f.stack_id = :stack and f.state = 'ACCEPTED' and fr.survey is null and f.missing_since is null)""").param("stack", stack).query(Boolean.class).single();
    }
}
