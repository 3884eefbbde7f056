package org.stook.app.archive;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The original frames, where they lie. */
@Component
public class Originals {
    private final JdbcClient jdbc;

    public Originals(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The file of a frame of a stack, if it still has as many bytes as it had. */
    public Optional<Path> find(String sha256) {
        record Place(Path root, String name, long bytes) {}
        return jdbc
                .sql("""
                        select distinct h.root, sf.rel_path, f.bytes from stook.stack_frame sf join stook.frame f on f.sha256 = sf.sha256
                          join stook.share h on h.id = sf.share_id where sf.sha256 = :sha256 order by 1, 2 limit 20""")
                .param("sha256", sha256)
                .query((row, n) -> new Place(Path.of(row.getString(1)).normalize(), row.getString(2), row.getLong(3)))
                .list()
                .stream()
                .filter(place -> place.root().resolve(place.name()).normalize().startsWith(place.root()))
                .map(place -> new Place(place.root().resolve(place.name()).normalize(), "", place.bytes()))
                .filter(place -> place.root().toFile().length() == place.bytes() && Files.isRegularFile(place.root()))
                .map(Place::root)
                .findFirst();
    }
}
