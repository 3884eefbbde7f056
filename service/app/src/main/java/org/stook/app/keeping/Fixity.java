package org.stook.app.keeping;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.HexFormat;
import java.util.List;
import java.util.Optional;
import java.util.function.LongSupplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ArrayNode;

/**
 * Holds published files against their hashes, the longest unchecked first, at a bounded rate: after a large file it waits until
 * the average is kept again. What is damaged is looked at again each day and stays on the page until it is whole.
 */
@Component
public class Fixity {
    private static final Logger LOG = LoggerFactory.getLogger(Fixity.class);
    private static final double NANOS = 1e9;

    /** A publication with files that are not what they were. */
    public record Damage(long runId, long stackId, String subject, List<String> files, Instant checkedAt) {}

    /** How far the checks are. */
    public record Progress(long publications, long checked, long damaged, long overdue) {}

    private final JdbcClient jdbc;
    private final PublishedFiles files;
    private final KeepingSettings settings;
    private final LongSupplier ticker;
    private final JsonMapper json;
    /** When the bytes read so far are paid for. */
    private long freeAt;

    Fixity(JdbcClient jdbc, PublishedFiles files, KeepingSettings settings, LongSupplier ticker, JsonMapper json) {
        this.jdbc = jdbc;
        this.files = files;
        this.settings = settings;
        this.ticker = ticker;
        this.json = json;
        this.freeAt = ticker.getAsLong();
    }

    /** Checks publications that are due for as long as the rate allows. */
    public void step() {
        while (ticker.getAsLong() - freeAt >= 0) {
            Optional<Long> due = jdbc.sql("""
                            select run_id from stook.fixity f where due_at <= now() and not exists (
                              select 1 from stook.removal r where r.run_id = f.run_id and r.state = 'REMOVED')
                            order by due_at, run_id limit 1""").query(Long.class).optional();
            if (due.isEmpty()) return;
            check(files.of(due.get()));
        }
    }

    private void check(PublishedFiles.Publication publication) {
        if (!publication.there()) {
            again(publication.runId(), "10 minutes");
            return;
        }
        long bytes = 0;
        ArrayNode damaged = json.createArrayNode();
        for (PublishedFiles.File file : publication.files()) {
            String found = hash(file.path());
            if (!found.equals(file.sha256())) {
                damaged.addObject()
                        .put("file", file.path().toString())
                        .put("found", found)
                        .put("expected", file.sha256());
                LOG.error(
                        "{}: found {}, expected SHA-256 {}; the publication of run {} is damaged",
                        file.path(),
                        found,
                        file.sha256(),
                        publication.runId());
            }
            bytes += size(file.path());
        }
        pay(bytes);
        jdbc.sql("""
                        update stook.fixity set checked_at = now(), outcome = :outcome, damaged = cast(:damaged as jsonb),
                          due_at = now() + make_interval(secs => :seconds) where run_id = :run""")
                .param("outcome", damaged.isEmpty() ? "GOOD" : "DAMAGED")
                .param("damaged", damaged.toString())
                .param("seconds", damaged.isEmpty() ? settings.every().toSeconds() : 86_400)
                .param("run", publication.runId())
                .update();
    }

    private void again(long run, String later) {
        jdbc.sql("update stook.fixity set due_at = now() + cast(:later as interval) where run_id = :run")
                .param("later", later)
                .param("run", run)
                .update();
    }

    private void pay(long bytes) {
        long now = ticker.getAsLong();
        freeAt = now + (long) (NANOS * bytes / settings.perSecond().toBytes());
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            return 0;
        }
    }

    /** The hash, or what stands in its place: nothing there, or an error of the disk. */
    static String hash(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            byte[] buffer = new byte[1 << 16];
            for (int read = in.read(buffer); read >= 0; read = in.read(buffer)) digest.update(buffer, 0, read);
            return HexFormat.of().formatHex(digest.digest());
        } catch (NoSuchFileException e) {
            return "nothing";
        } catch (IOException e) {
            return "unreadable (" + e.getMessage() + ")";
        } catch (NoSuchAlgorithmException e) {
            throw new IllegalStateException("every Java has SHA-256", e);
        }
    }

    /** The newest first. */
    public List<Damage> damaged(int limit) {
        return jdbc.sql("""
                        select f.run_id, p.stack_id, s.subject, f.checked_at,
                          (select string_agg(d ->> 'file' || ': found ' || (d ->> 'found') || ', expected ' || (d ->> 'expected'), e'\\n')
                            from jsonb_array_elements(f.damaged) d)
                        from stook.fixity f join stook.publication p on p.run_id = f.run_id join stook.stack s on s.id = p.stack_id
                        where f.outcome = 'DAMAGED' order by f.checked_at desc, f.run_id limit :limit""")
                .param("limit", limit)
                .query((row, n) -> new Damage(
                        row.getLong(1),
                        row.getLong(2),
                        row.getString(3),
                        List.of(row.getString(5).split("\n", -1)),
                        row.getObject(4, OffsetDateTime.class).toInstant()))
                .list();
    }

    public Progress progress() {
        return jdbc.sql("""
                        select count(*), count(checked_at), count(*) filter (where outcome = 'DAMAGED'),
                          count(*) filter (where due_at < now() - interval '1 day') from stook.fixity""")
                .query((row, n) -> new Progress(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4)))
                .single();
    }
}
