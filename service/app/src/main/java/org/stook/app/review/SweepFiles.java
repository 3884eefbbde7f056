package org.stook.app.review;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Where the frames of a stack lie, as they came from the camera. They are only read. */
@Component
class SweepFiles {
    private final JdbcClient jdbc;

    SweepFiles(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    Optional<Path> ofRun(long run, String file) {
        return find("(select r.stack_id from stook.run r where r.id = :id)", run, file);
    }

    Optional<Path> ofStack(long stack, String file) {
        return find(":id", stack, file);
    }

    private Optional<Path> find(String stack, long id, String file) {
        return jdbc.sql("select h.root, f.rel_path from stook.stack_frame f join stook.share h on h.id = f.share_id"
                        + " where f.stack_id = " + stack
                        + " and regexp_replace(f.rel_path, '^.*/', '') = :file order by f.ordinal limit 1")
                .param("id", id)
                .param("file", file)
                .query((row, n) -> Path.of(row.getString(1)).resolve(row.getString(2)))
                .optional()
                .filter(Files::isRegularFile);
    }

    /** A frame cannot be shown; the sentence says why. */
    static IOException gone(String file) {
        return new IOException(file + " is not where it was at intake");
    }
}
