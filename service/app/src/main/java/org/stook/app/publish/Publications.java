package org.stook.app.publish;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.core.JacksonException;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The composites that are official. */
@Component
public class Publications {
    private static final Logger LOG = LoggerFactory.getLogger(Publications.class);

    /**
     * @param name of the composite, relative to its share's root
     * @param score null if the worker gave none
     * @param setAside how many files of its stack's folder were not used
     */
    public record Publication(
            long runId,
            long stackId,
            String subject,
            String station,
            String name,
            String sha256,
            long bytes,
            Instant publishedAt,
            @Nullable Score score,
            long setAside) {}

    /**
     * One thing the worker noted about a file.
     *
     * @param role what the file was used as: "stray" if it was not
     * @param sentence names the file
     */
    public record Note(String role, String sentence) {
        public boolean setAside() {
            return role.equals("stray");
        }
    }

    /** What lies beside a composite. */
    record Beside(String name, @Nullable String kind) {}

    private static final String SELECT = """
            select p.run_id, p.stack_id, s.subject, t.name as station, p.name, p.sha256, p.bytes, p.published_at, r.score::text,
              (select count(*) from stook.stack_frame f where f.stack_id = s.id and f.role = 'STRAY')
              + (select count(*) from stook.intake_file f where f.stack_id = s.id and f.state in ('INCOMPLETE', 'REJECTED')) as set_aside
            from stook.publication p join stook.run r on r.id = p.run_id join stook.stack s on s.id = p.stack_id
            join stook.station t on t.id = s.station_id
            """;

    private final JdbcClient jdbc;
    private final JsonMapper json;

    public Publications(JdbcClient jdbc, JsonMapper json) {
        this.jdbc = jdbc;
        this.json = json;
    }

    /** The newest first. */
    public List<Publication> latest(int limit) {
        return jdbc.sql(SELECT + "order by p.published_at desc, p.run_id desc limit :limit")
                .param("limit", limit)
                .query((row, n) -> read(row))
                .list();
    }

    /** The newest first. */
    public List<Publication> ofStack(long stackId) {
        return jdbc.sql(SELECT + "where p.stack_id = :stack order by p.published_at desc, p.run_id desc")
                .param("stack", stackId)
                .query((row, n) -> read(row))
                .list();
    }

    /** The preview of a published run, if it is where the publication says. */
    public Optional<Path> preview(long runId) {
        return beside(runId, "preview");
    }

    /** The very small picture of a published run; the preview where it has none. */
    public Optional<Path> thumbnail(long runId) {
        return beside(runId, "thumbnail").or(() -> preview(runId));
    }

    /**
     * A file of a published run, if it is where the publication says.
     *
     * @param kind "master", or what stands beside it: "derivative", "record", "source-map"
     */
    public Optional<Path> file(long runId, String kind) {
        return beside(runId, kind);
    }

    /**
     * What the worker's record says of single files: why one was set aside, or what is doubtful about its placement. Empty
     * if the record is out of reach; the page is then shorter, not broken.
     */
    public List<Note> notes(long runId) {
        return beside(runId, "record").map(this::notes).orElse(List.of());
    }

    private List<Note> notes(Path file) {
        try {
            List<Note> notes = new ArrayList<>();
            for (JsonNode frame : json.readTree(file.toFile()).path("frames")) {
                String reason = frame.path("reason").asString("");
                if (!reason.isEmpty()) notes.add(new Note(frame.path("role").asString(""), reason));
            }
            return notes;
        } catch (JacksonException e) {
            LOG.warn("the record {} cannot be read and is not shown: {}", file, e.getMessage());
            return List.of();
        }
    }

    private Optional<Path> beside(long runId, String kind) {
        record Place(Path root, String composite, String files) {}
        return jdbc.sql("select h.root, p.name, p.files::text from stook.publication p"
                        + " join stook.share h on h.id = p.share_id where p.run_id = :run")
                .param("run", runId)
                .query((row, n) -> new Place(Path.of(row.getString(1)), row.getString(2), row.getString(3)))
                .optional()
                .flatMap(place -> Stream.concat(
                                Stream.of(new Beside(place.composite(), "master")), beside(place.files()))
                        .filter(file -> kind.equals(file.kind()))
                        .flatMap(file -> places(place.root(), place.composite(), file.name()))
                        .filter(Files::isRegularFile)
                        .findFirst());
    }

    /** Names count from the share's root; a bare one may also count from the composite's folder. Never outside the share. */
    private static Stream<Path> places(Path root, String composite, String name) {
        Path top = root.normalize();
        return Stream.of(top.resolve(name), top.resolve(composite).resolveSibling(name))
                .map(Path::normalize)
                .filter(path -> path.startsWith(top));
    }

    private Stream<Beside> beside(String files) {
        return Stream.of(json.readValue(files, Beside[].class));
    }

    private Publication read(ResultSet row) throws SQLException {
        return new Publication(
                row.getLong(1),
                row.getLong(2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                row.getLong(7),
                row.getObject(8, OffsetDateTime.class).toInstant(),
                score(row.getLong(1), row.getString(9)),
                row.getLong(10));
    }

    private @Nullable Score score(long run, @Nullable String text) {
        if (text == null) {
            return null;
        }
        try {
            return json.readValue(text, Score.class);
        } catch (JacksonException e) {
            LOG.warn("the score of run {} cannot be read and is not shown: {}", run, e.getMessage());
            return null;
        }
    }
}
