package org.stook.app.stack;

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
import org.stook.orders.Runs;

/** Fixes a stack's frames and orders its run, in one transaction. */
@Component
public class Sealing {
    private static final int FEWEST = 2;
    /** Canonical JSON (RFC 8785) of settings that change nothing. */
    private static final String PLAIN = "{}";

    private record Open(String state, String settings, boolean onTable) {}

    private final JdbcClient jdbc;
    private final Runs runs;
    private final TransactionOperations transaction;

    public Sealing(JdbcClient jdbc, Runs runs, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.runs = runs;
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
            Selection selection = Selection.of(candidates(stackId));
            if (selection.sweep().size() < FEWEST) {
                return notYet(stackId, selection);
            }
            setAside(selection);
            return fix(stackId, stack, selection, actor);
        }));
    }

    private Open lock(long stackId) {
        return jdbc.sql("""
                        select s.state, coalesce(t.tone_settings_id, ''), s.on_table
                        from stook.stack s join stook.station t on t.id = s.station_id
                        where s.id = :stack for update of s""")
                .param("stack", stackId)
                .query((row, n) -> new Open(row.getString(1), row.getString(2), row.getBoolean(3)))
                .optional()
                .orElseThrow(() -> new IllegalArgumentException("there is no stack " + stackId));
    }

    private List<Candidate> candidates(long stackId) {
        return jdbc.sql("""
                        select f.id, f.share_id, f.rel_path, f.sha256, fr.width, fr.height, fr.captured_at
                        from stook.stack s join stook.station t on t.id = s.station_id
                        join stook.intake_file f on f.share_id = t.intake_share_id and starts_with(f.rel_path, s.folder || '/')
                        join stook.frame fr on fr.sha256 = f.sha256
                        where s.id = :stack and f.state = 'ACCEPTED' and f.missing_since is null
                          and not exists (select 1 from stook.stack_frame sf where sf.share_id = f.share_id
                            and sf.rel_path = f.rel_path and sf.sha256 = f.sha256)
                        order by f.id""")
                .param("stack", stackId)
                .query((row, n) -> new Candidate(
                        row.getLong(1),
                        row.getLong(2),
                        row.getString(3),
                        row.getString(4),
                        row.getInt(5),
                        row.getInt(6),
                        row.getObject(7, LocalDateTime.class)))
                .list();
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
        int ordinal = 0;
        for (Candidate frame : selection.sweep()) put(stackId, ordinal++, frame, "SWEEP", null);
        for (Selection.Stray stray : selection.strays())
            put(stackId, ordinal++, stray.frame(), "STRAY", stray.reason());
        String manifest = Hashes.manifest(selection.sweep());
        List<Long> same = jdbc.sql("select id from stook.stack where manifest_sha256 = :manifest")
                .param("manifest", manifest)
                .query(Long.class)
                .list();
        if (!same.isEmpty()) {
            jdbc.sql("update stook.stack set state = 'ASIDE', reason = :reason where id = :stack")
                    .param(
                            "reason",
                            "has the very frames of stack " + same.get(0) + ", which is the one that is worked")
                    .param("stack", stackId)
                    .update();
            return new Sealed.Known(same.get(0));
        }
        jdbc.sql(
                        "update stook.stack set state = 'SEALED', manifest_sha256 = :manifest, reason = null where id = :stack")
                .param("manifest", manifest)
                .param("stack", stackId)
                .update();
        String settings = stack.settings().isEmpty() ? plainSettings() : stack.settings();
        int priority = stack.onTable() ? Priorities.ON_TABLE : Priorities.NORMAL;
        long run = runs.create(new NewRun(stackId, settings, priority, actor)).value();
        return new Sealed.Done(
                stackId, run, selection.sweep().size(), selection.strays().size());
    }

    private void put(long stackId, int ordinal, Candidate frame, String role, @Nullable String reason) {
        jdbc.sql("""
                        insert into stook.stack_frame (stack_id, ordinal, sha256, share_id, rel_path, role, reason)
                        values (:stack, :ordinal, :sha256, :share, :path, :role, :reason)""")
                .param("stack", stackId)
                .param("ordinal", ordinal)
                .param("sha256", frame.sha256())
                .param("share", frame.shareId())
                .param("path", frame.path())
                .param("role", role)
                .param("reason", reason)
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
