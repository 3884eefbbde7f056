package org.stook.app.stack;

import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.orders.Actor;

/** Frames set aside and taken back by a person. If their stack is sealed already, its next version is sealed and queued. */
@Component
public class Strays {
    /** @param stack the stack that the file belongs to now; sealed: what came of sealing it anew */
    public record Moved(long stack, @Nullable Sealed sealed) {}

    private record File(
            long id,
            String path,
            String state,
            @Nullable Long stack,
            @Nullable String stackState) {}

    private final JdbcClient jdbc;
    private final Versions versions;
    private final Sealing sealing;
    private final TransactionOperations transaction;

    public Strays(JdbcClient jdbc, Versions versions, Sealing sealing, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.versions = versions;
        this.sealing = sealing;
        this.transaction = transaction;
    }

    /**
     * Takes a stray back into its stack; the intake will not set it aside again.
     *
     * @return empty if there is no such file
     * @throws IllegalStateException if it is no stray, or the stack could not be sealed with it; a sentence, and nothing has changed
     */
    public Optional<Moved> restore(long file, String actor) {
        return move(file, actor, "STRAY", () -> jdbc.sql("""
                        update stook.intake_file set state = 'ACCEPTED', kept = true, reason_code = null, reason = null
                        where id = :id""").param("id", file).update());
    }

    /** Sets a frame of a stack aside, for the same. */
    public Optional<Moved> setAside(long file, String reason, String actor) {
        return move(
                file,
                actor,
                "ACCEPTED",
                () -> jdbc.sql("""
                        update stook.intake_file set state = 'STRAY', kept = false, reason_code = 'BY_HAND',
                          reason = regexp_replace(rel_path, '^.*/', '') || ': ' || :reason where id = :id""")
                        .param("reason", reason.isBlank() ? "set aside by hand" : reason.strip())
                        .param("id", file)
                        .update());
    }

    private Optional<Moved> move(long id, String actor, String from, Runnable change) {
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            Optional<File> found = find(id);
            found.ifPresent(file -> {
                if (!file.state().equals(from) || file.stack() == null) {
                    throw new IllegalStateException("%s is %s, found where %s of a stack was expected"
                            .formatted(
                                    file.path(),
                                    file.state().toLowerCase(java.util.Locale.ROOT),
                                    from.equals("STRAY") ? "a stray" : "a frame"));
                }
            });
            return found.map(file -> moved(file, actor, change));
        }));
    }

    private Moved moved(File file, String actor, Runnable change) {
        long stack = Objects.requireNonNull(file.stack());
        boolean collecting = "COLLECTING".equals(file.stackState());
        long open = collecting ? stack : versions.open(stack);
        change.run();
        if (collecting) {
            return new Moved(open, null);
        }
        Sealed sealed = sealing.seal(open, actor);
        if (!(sealed instanceof Sealed.Done)) {
            // Rolls all of it back.
            String why = sealed instanceof Sealed.NotYet not
                    ? not.reason()
                    : "its sweep would be the same, or another stack's";
            throw new IllegalStateException("stack %d stays as it is: %s".formatted(stack, why));
        }
        return new Moved(open, sealed);
    }

    private Optional<File> find(long id) {
        return jdbc.sql("""
                        select f.id, f.rel_path, f.state, f.stack_id, s.state from stook.intake_file f
                        left join stook.stack s on s.id = f.stack_id where f.id = :id for update of f""")
                .param("id", id)
                .query((row, n) -> new File(
                        row.getLong(1),
                        row.getString(2),
                        row.getString(3),
                        row.getObject(4, Long.class),
                        row.getString(5)))
                .optional();
    }
}
