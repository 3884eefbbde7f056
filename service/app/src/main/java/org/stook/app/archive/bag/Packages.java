package org.stook.app.archive.bag;

import java.nio.file.Path;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;

/**
 * Bags that were asked for. To make one ready each of its files is read once and compared with its hash; what changes with time, such
 * as the audit entries, is fixed when it is asked for. So it has the same bytes whenever it is fetched.
 */
@Component
public class Packages {
    /** The most publications in one bag. */
    public static final int MOST = 5000;

    /** @param state PREPARING, READY or FAILED */
    public record Package(
            long id,
            List<Long> runs,
            Frames frames,
            String state,
            long bytesDone,
            long bytesTotal,
            @Nullable String reason,
            Instant createdAt,
            String createdBy) {}

    private static final String SELECT =
            "select id, runs, frames, state, bytes_done, bytes_total, reason, created_at, created_by from stook.package ";

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final AuditTrail audit;
    private final Dossiers dossiers;
    private final Digests digests;
    private final List<BagAddition> additions;

    Packages(
            JdbcClient jdbc,
            TransactionOperations transaction,
            AuditTrail audit,
            Dossiers dossiers,
            Digests digests,
            List<BagAddition> additions) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.audit = audit;
        this.dossiers = dossiers;
        this.digests = digests;
        this.additions = additions;
    }

    public Optional<Package> find(long id) {
        return jdbc.sql(SELECT + "where id = :id")
                .param("id", id)
                .query(Packages::read)
                .optional();
    }

    /** The newest first; those of one publication are no news. */
    public List<Package> latest(int limit) {
        return jdbc.sql(SELECT + "where cardinality(runs) > 1 or state <> 'READY' order by id desc limit :limit")
                .param("limit", limit)
                .query(Packages::read)
                .list();
    }

    /**
     * Asks for a bag; it is made ready in the background.
     *
     * @param runs published ones, in the order in which they come
     */
    public long order(List<Long> runs, Frames frames, String actor) {
        if (runs.isEmpty() || runs.size() > MOST) {
            throw new IllegalArgumentException("found %d publications, expected 1 to %d".formatted(runs.size(), MOST));
        }
        Long id = transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            long made = jdbc.sql("""
                            insert into stook.package (runs, frames, audit_until, created_by)
                            values (:runs, :frames, (select coalesce(max(id), 0) from stook.audit_entry), stook.actor()) returning id""")
                    .param("runs", runs.toArray(Long[]::new))
                    .param("frames", frames.name())
                    .query(Long.class)
                    .single();
            audit.write("package.ORDERED", "package/" + made);
            return made;
        });
        return java.util.Objects.requireNonNull(id);
    }

    /** The bag of one publication, made ready at once: the one from before if nothing was done with the stack since. */
    public Package ofRun(long run, Frames frames, String actor) {
        Optional<Package> before = jdbc.sql(SELECT + """
                        p where runs = array[:run]::bigint[] and frames = :frames and state = 'READY' and not exists (
                          select 1 from stook.audit_entry e join stook.publication b on b.run_id = :run
                          where e.subject in ('run/' || b.run_id, 'stack/' || b.stack_id) and e.id > p.audit_until and e.kind <> :fetched)
                        order by id desc limit 1""")
                .param("run", run)
                .param("frames", frames.name())
                .param("fetched", Dossiers.FETCHED)
                .query(Packages::read)
                .optional();
        if (before.isPresent()) return before.get();
        long id = order(List.of(run), frames, actor);
        prepare(id, Long.MAX_VALUE);
        return find(id).orElseThrow();
    }

    /**
     * Goes on with the oldest bag that is not ready.
     *
     * @param budget how many bytes to read, more or less
     * @return whether there was anything to do
     */
    public boolean step(long budget) {
        Optional<Long> open = jdbc.sql("select id from stook.package where state = 'PREPARING' order by id limit 1")
                .query(Long.class)
                .optional();
        open.ifPresent(id -> prepare(id, budget));
        return open.isPresent();
    }

    private void prepare(long id, long budget) {
        try {
            long done = 0;
            long total = 0;
            long left = budget;
            Package order = find(id).orElseThrow();
            for (long run : order.runs()) {
                Map<String, File> files = files(run, order.frames());
                Set<String> known = digests.known(files.keySet()).keySet();
                for (Map.Entry<String, File> file : files.entrySet()) {
                    long bytes = file.getValue().bytes();
                    total += bytes;
                    if (known.contains(file.getKey())) {
                        done += bytes;
                    } else if (left > 0) {
                        digests.measure(file.getValue().path(), file.getKey());
                        left -= bytes;
                        done += bytes;
                    }
                }
            }
            if (done == total) for (long run : order.runs()) additions(id, run);
            state(id, done == total ? "READY" : "PREPARING", done, total);
        } catch (NotWhole e) {
            failed(id, String.valueOf(e.getMessage()));
        }
    }

    private record File(Path path, long bytes) {}

    /** By hash: the same file need not be read twice. */
    private Map<String, File> files(long run, Frames frames) throws NotWhole {
        Dossier dossier = dossiers.of(run, 0)
                .orElseThrow(() -> new NotWhole("run " + run + " is not published, so it cannot be packed"));
        Map<String, File> files = new LinkedHashMap<>();
        dossier.files().forEach(f -> files.put(f.sha256(), new File(f.path(), f.bytes())));
        if (frames != Frames.NAMED) {
            dossier.frames().forEach(f -> files.put(f.sha256(), new File(f.path(), f.bytes())));
        }
        return files;
    }

    private void additions(long id, long run) {
        long stack = dossiers.of(run, 0).orElseThrow().head().stack();
        for (BagAddition addition : additions) {
            addition.of(run, stack)
                    .ifPresent(body ->
                            jdbc.sql("""
                            insert into stook.package_file (package_id, run_id, name, body) values (?, ?, ?, ?)
                            on conflict do nothing""").params(id, run, addition.name(), body).update());
        }
    }

    private void state(long id, String state, long done, long total) {
        jdbc.sql("""
                        update stook.package set state = :state, bytes_done = :done, bytes_total = :total, changed_at = now()
                        where id = :id""")
                .param("state", state)
                .param("done", done)
                .param("total", total)
                .param("id", id)
                .update();
    }

    private void failed(long id, String reason) {
        jdbc.sql("update stook.package set state = 'FAILED', reason = :reason, changed_at = now() where id = :id")
                .param("reason", reason)
                .param("id", id)
                .update();
    }

    private static Package read(ResultSet row, int n) throws SQLException {
        return new Package(
                row.getLong(1),
                List.of((Long[]) row.getArray(2).getArray()),
                Frames.valueOf(row.getString(3)),
                row.getString(4),
                row.getLong(5),
                row.getLong(6),
                row.getString(7),
                row.getObject(8, OffsetDateTime.class).toInstant(),
                row.getString(9));
    }
}
