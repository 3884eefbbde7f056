package org.stook.app.archive.bag;

import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.app.archive.bag.Dossier.FrameFile;
import org.stook.app.archive.bag.Dossier.Head;
import org.stook.app.archive.bag.Dossier.Published;
import org.stook.app.audit.AuditTrail;
import org.stook.app.audit.AuditTrail.Entry;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Puts dossiers together from the tables. */
@Component
class Dossiers {
    /** That somebody fetched it is no part of how it came to be, and would make each bag another one. */
    static final String FETCHED = "run.PULLED";

    /** Folders of thousands of small files that are cut from the master and can be cut again. */
    private static final Set<String> FOR_THE_SCREEN = Set.of("tiles", "review");

    private record Row(Head head, Path root, String name, String sha256, long bytes, String files) {}

    private final JdbcClient jdbc;
    private final JsonMapper json;
    private final AuditTrail audit;

    Dossiers(JdbcClient jdbc, JsonMapper json, AuditTrail audit) {
        this.jdbc = jdbc;
        this.json = json;
        this.audit = audit;
    }

    /** @param auditUntil the newest audit entry that counts */
    Optional<Dossier> of(long run, long auditUntil) {
        return jdbc.sql("""
                        select p.run_id, p.stack_id, s.subject, s.view_name, t.name, r.settings_id, ts.body::text, p.engine_version,
                          a.worker_id, r.score::text, r.verdict, p.published_at, h.root, p.name, p.sha256, p.bytes, p.files::text
                        from stook.publication p join stook.run r on r.id = p.run_id join stook.stack s on s.id = p.stack_id
                          join stook.station t on t.id = s.station_id join stook.tone_settings ts on ts.id = r.settings_id
                          join stook.attempt a on a.run_id = p.run_id and a.n = p.attempt join stook.share h on h.id = p.share_id
                        where p.run_id = :run""")
                .param("run", run)
                .query(Dossiers::row)
                .optional()
                .map(row ->
                        new Dossier(row.head(), files(row), frames(row.head().stack()), acts(row.head(), auditUntil)));
    }

    private static Row row(ResultSet row, int n) throws SQLException {
        Head head = new Head(
                row.getLong(1),
                row.getLong(2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                row.getString(7),
                row.getString(8),
                row.getString(9),
                row.getString(10),
                row.getString(11),
                row.getObject(12, OffsetDateTime.class).toInstant());
        return new Row(
                head,
                Path.of(row.getString(13)).normalize(),
                row.getString(14),
                row.getString(15),
                row.getLong(16),
                row.getString(17));
    }

    private List<Published> files(Row row) {
        List<Published> files = new ArrayList<>();
        files.add(new Published("master", within(row.root(), row.name()), row.bytes(), row.sha256()));
        for (JsonNode file : json.readTree(row.files())) {
            if (FOR_THE_SCREEN.contains(file.path("kind").asString(""))) continue;
            files.add(new Published(
                    file.path("kind").asString("other"),
                    within(row.root(), file.path("name").asString("")),
                    file.path("bytes").asLong(),
                    file.path("sha256").asString("")));
        }
        return files;
    }

    private List<FrameFile> frames(long stack) {
        return jdbc.sql("""
                        select sf.ordinal, sf.role, h.name, sf.rel_path, h.root, f.bytes, f.sha256, f.format, f.captured_at, f.created_at
                        from stook.stack_frame sf join stook.frame f on f.sha256 = sf.sha256 join stook.share h on h.id = sf.share_id
                        where sf.stack_id = :stack and sf.role <> 'STRAY' order by sf.ordinal""")
                .param("stack", stack)
                .query((row, n) -> new FrameFile(
                        row.getInt(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        within(Path.of(row.getString(5)).normalize(), row.getString(4)),
                        row.getLong(6),
                        row.getString(7),
                        row.getString(8),
                        row.getObject(9, LocalDateTime.class),
                        row.getObject(10, OffsetDateTime.class).toInstant()))
                .list();
    }

    private List<Entry> acts(Head head, long auditUntil) {
        return audit.upTo(auditUntil, List.of("run/" + head.run(), "stack/" + head.stack())).stream()
                .filter(entry -> !entry.kind().equals(FETCHED))
                .toList();
    }

    private static Path within(Path root, String name) {
        Path path = root.resolve(name).normalize();
        if (!path.startsWith(root)) throw new IllegalStateException(name + " leads out of the share " + root);
        return path;
    }
}
