package org.stook.app.stack;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.orders.Actor;
import org.stook.orders.NewRun;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;
import org.stook.orders.Runs;

/** Fixes a stack's frames and orders its run, in one transaction. */
@Component
public class Sealing {
    private static final int FEWEST = 2;
    /** Canonical JSON (RFC 8785) of settings that change nothing. */
    private static final String PLAIN = "{}";

    private static final String FILES = """
            select f.id, f.share_id, f.rel_path, f.sha256, fr.width, fr.height, fr.captured_at, f.kept, f.state, f.role, f.reason
            from stook.intake_file f join stook.frame fr on fr.sha256 = f.sha256
            where f.stack_id = :stack and f.missing_since is null
            """;

    private record Open(
            String state,
            String settings,
            boolean onTable,
            int priority,
            @Nullable String question,
            @Nullable Long origin) {}

    /** A file of the stack that is not of its sweep. */
    private record Beside(
            Candidate frame, String role, @Nullable String reason) {}

    private final JdbcClient jdbc;
    private final Runs runs;
    private final Versions versions;
    private final TransactionOperations transaction;

    public Sealing(JdbcClient jdbc, Runs runs, Versions versions, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.runs = runs;
        this.versions = versions;
        this.transaction = transaction;
    }

    /** Of several callers one seals; the others learn that it is over. */
    public Sealed seal(long stackId, String actor) {
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            Open stack = lock(stackId);
            if (!stack.state().equals("COLLECTING")) {
                return new Sealed.Over(stack.state());
            }
            if (stack.question() != null) {
                return new Sealed.NotYet(stack.question());
            }
            Selection selection = Selection.of(frames(stackId));
            if (selection.sweep().size() < FEWEST) {
                return notYet(stackId, selection);
            }
            return fix(stackId, stack, selection, actor);
        }));
    }

    private Open lock(long stackId) {
        return jdbc.sql("""
                        select s.state, coalesce(t.tone_settings_id, ''), s.on_table,
                          coalesce((t.settings->>'priority')::numeric::int, :normal), s.question, s.origin_id
                        from stook.stack s join stook.station t on t.id = s.station_id
                        where s.id = :stack for update of s""")
                .param("normal", Priorities.NORMAL)
                .param("stack", stackId)
                .query((row, n) -> new Open(
                        row.getString(1),
                        row.getString(2),
                        row.getBoolean(3),
                        row.getInt(4),
                        row.getString(5),
                        row.getObject(6, Long.class)))
                .optional()
                .orElseThrow(() -> new IllegalArgumentException("there is no stack " + stackId));
    }

    private List<Candidate> frames(long stackId) {
        return jdbc.sql(FILES + "and f.state = 'ACCEPTED' and f.role = 'FRAME' order by f.id")
                .param("stack", stackId)
                .query((row, n) -> candidate(row))
                .list();
    }

    private List<Beside> beside(long stackId) {
        return jdbc.sql(FILES + """
                        and (f.state = 'STRAY' or f.state = 'ACCEPTED' and f.role <> 'FRAME')
                        order by f.role, fr.captured_at nulls last, f.rel_path""")
                .param("stack", stackId)
                .query((row, n) -> new Beside(
                        candidate(row),
                        row.getString(9).equals("STRAY") ? "STRAY" : row.getString(10),
                        row.getString(11)))
                .list();
    }

    private static Candidate candidate(ResultSet row) throws SQLException {
        return new Candidate(
                row.getLong(1),
                new Candidate.Place(row.getLong(2), row.getString(3)),
                row.getString(4),
                new Candidate.Facts(
                        row.getInt(5), row.getInt(6), row.getObject(7, LocalDateTime.class), row.getBoolean(8)));
    }

    private Sealed notYet(long stackId, Selection selection) {
        String reason = "found %d usable frame%s of one size, a stack needs at least %d"
                .formatted(selection.sweep().size(), selection.sweep().size() == 1 ? "" : "s", FEWEST);
        jdbc.sql("update stook.stack set reason = :reason where id = :stack and reason is distinct from :reason")
                .param("reason", reason)
                .param("stack", stackId)
                .update();
        return new Sealed.NotYet(reason);
    }

    private void setAside(Selection selection) {
        for (Selection.Stray stray : selection.strays()) {
            jdbc.sql(
                            "update stook.intake_file set state = 'STRAY', reason_code = 'MISFIT', reason = :reason where id = :id")
                    .param("reason", stray.reason())
                    .param("id", stray.frame().fileId())
                    .update();
        }
    }

    private Sealed fix(long stackId, Open stack, Selection selection, String actor) {
        setAside(selection);
        String manifest = Hashes.manifest(selection.sweep());
        List<Long> same = jdbc.sql("select id from stook.stack where manifest_sha256 = :manifest")
                .param("manifest", manifest)
                .query(Long.class)
                .list();
        if (!same.isEmpty()) {
            return known(stackId, stack, same.get(0));
        }
        List<Beside> beside = beside(stackId);
        int ordinal = 0;
        for (Candidate frame : selection.sweep()) put(stackId, ordinal++, new Beside(frame, "SWEEP", null));
        for (Beside other : beside) put(stackId, ordinal++, other);
        jdbc.sql(
                        "update stook.stack set state = 'SEALED', manifest_sha256 = :manifest, reason = null where id = :stack")
                .param("manifest", manifest)
                .param("stack", stackId)
                .update();
        replace(stackId, stack, actor);
        String settings = stack.settings().isEmpty() ? plainSettings() : stack.settings();
        int priority = stack.onTable() ? Priorities.ON_TABLE : stack.priority();
        long run = runs.create(new NewRun(stackId, settings, priority, actor)).value();
        return new Sealed.Done(stackId, run, selection.sweep().size(), (int)
                beside.stream().filter(b -> b.role().equals("STRAY")).count());
    }

    private Sealed known(long stackId, Open stack, long other) {
        boolean own = jdbc.sql("select id = :origin or origin_id = :origin from stook.stack where id = :other")
                .param("origin", stack.origin(), java.sql.Types.BIGINT)
                .param("other", other)
                .query((row, n) -> row.getBoolean(1))
                .single();
        if (own) {
            versions.move(stackId, other);
        }
        jdbc.sql("update stook.stack set state = 'ASIDE', reason = :reason where id = :stack")
                .param(
                        "reason",
                        own
                                ? "has the same sweep as stack " + other + ", the version before it, which stays"
                                : "has the very frames of stack " + other + ", which is the one that is worked")
                .param("stack", stackId)
                .update();
        return new Sealed.Known(other);
    }

    /** The versions before it step back; what they have waiting or running is not wanted any more. */
    private void replace(long stackId, Open stack, String actor) {
        if (stack.origin() == null) {
            return;
        }
        List<Long> earlier = jdbc.sql("""
                        update stook.stack set state = 'ASIDE', reason = 'was replaced by its next version, stack ' || :stack
                        where coalesce(origin_id, id) = :origin and id <> :stack and state = 'SEALED' returning id""")
                .param("stack", stackId)
                .param("origin", stack.origin())
                .query(Long.class)
                .list();
        for (long old : earlier) {
            jdbc.sql(
                            "select id from stook.run where stack_id = :old and state in ('READY', 'HELD', 'RUNNING') order by id")
                    .param("old", old)
                    .query(Long.class)
                    .list()
                    .forEach(run -> runs.cancel(
                            new RunId(run),
                            actor,
                            "Its stack was replaced by a version with other frames, stack " + stackId + "."));
        }
    }

    private void put(long stackId, int ordinal, Beside file) {
        jdbc.sql("""
                        insert into stook.stack_frame (stack_id, ordinal, sha256, share_id, rel_path, role, reason)
                        values (:stack, :ordinal, :sha256, :share, :path, :role, :reason)""")
                .param("stack", stackId)
                .param("ordinal", ordinal)
                .param("sha256", file.frame().sha256())
                .param("share", file.frame().place().shareId())
                .param("path", file.frame().place().path())
                .param("role", file.role())
                .param("reason", file.reason())
                .update();
    }

    private String plainSettings() {
        String id = Hashes.of(PLAIN);
        jdbc.sql("insert into stook.tone_settings (id, body) values (:id, cast(:body as jsonb)) on conflict do nothing")
                .param("id", id)
                .param("body", PLAIN)
                .update();
        return id;
    }
}
