package org.stook.app.people;

import java.text.Normalizer;
import java.time.Duration;
import java.util.Collection;
import java.util.Locale;
import java.util.Objects;
import java.util.Set;
import java.util.function.Supplier;
import java.util.regex.Pattern;
import org.springframework.dao.DuplicateKeyException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;

/** What an administrator changes: who there is, as what, and new codes. Each change is in the audit trail. */
@Component
public class Rights {
    /** How long a one-time code holds. */
    public static final Duration CODE_HOLDS = Duration.ofDays(3);

    /** @param code to be told to the person; shown once, kept only as a hash */
    public record Invitation(Person person, String code) {}

    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{M}\\p{N} ._@'-]{0,59}");
    /** Names under which programs act in the audit trail. */
    private static final Set<String> TAKEN = Set.of("intake", "service", "worker", "database", "desk", "set-up");

    private final JdbcClient jdbc;
    private final People people;
    private final AuditTrail audit;
    private final TransactionOperations transaction;

    public Rights(JdbcClient jdbc, People people, AuditTrail audit, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.people = people;
        this.audit = audit;
        this.transaction = transaction;
    }

    /** @throws IllegalArgumentException if the name or the roles will not do, or the name is taken */
    public Invitation add(String name, Collection<Role> roles, String actor) {
        String fit = fit(name);
        check(roles);
        try {
            return within(actor, () -> {
                long id = jdbc.sql("insert into stook.person (name, roles) values (:name, :roles) returning id")
                        .param("name", fit)
                        .param("roles", People.words(roles))
                        .query(Long.class)
                        .single();
                audit.write("person.ADDED", "person/" + id);
                return invite(id);
            });
        } catch (DuplicateKeyException e) {
            throw new IllegalArgumentException("there is somebody called '" + fit + "' already");
        }
    }

    /**
     * Sets roles and whether the person may sign in. Sessions of that person end.
     *
     * @throws IllegalStateException if nobody would be left who can let others in
     */
    public Person change(long id, Collection<Role> roles, boolean active, String actor) {
        check(roles);
        return within(actor, () -> {
            Person before = known(id);
            lockAdministrators();
            jdbc.sql("update stook.person set roles = :roles, active = :active, edition = edition + 1,"
                            + " changed_at = now() where id = :id")
                    .param("roles", People.words(roles))
                    .param("active", active)
                    .param("id", id)
                    .update();
            if (!people.administered()) {
                throw new IllegalStateException(
                        "nobody would be left who can let others in: " + before.name() + " is the only administrator");
            }
            audit.write(active ? "person.CHANGED" : "person.DISABLED", "person/" + id);
            return known(id);
        });
    }

    /** A new one-time code; the password that was is void at once. */
    public Invitation reset(long id, String actor) {
        return within(actor, () -> {
            Person person = known(id);
            lockAdministrators();
            jdbc.sql("update stook.person set password = null, edition = edition + 1, changed_at = now()"
                            + " where id = :id")
                    .param("id", id)
                    .update();
            if (!people.administered()) {
                throw new IllegalStateException(person.name() + " is the only administrator; let another one in first");
            }
            audit.write("person.RESET", "person/" + id);
            return invite(id);
        });
    }

    private Invitation invite(long id) {
        String code = OneTimeCode.fresh();
        jdbc.sql("update stook.person set code_sha256 = :hash, code_until = now() + make_interval(secs => :seconds)"
                        + " where id = :id")
                .param("hash", OneTimeCode.sha256(code))
                .param("seconds", CODE_HOLDS.toSeconds())
                .param("id", id)
                .update();
        return new Invitation(known(id), code);
    }

    /** Two changes at a time must not each leave the other's administrator as the last one. */
    private void lockAdministrators() {
        jdbc.sql("select id from stook.person where 'ADMINISTRATOR' = any(roles) order by id for update")
                .query(Long.class)
                .list();
    }

    private Person known(long id) {
        return people.find(id).orElseThrow(() -> new IllegalArgumentException("there is no person " + id));
    }

    static String fit(String name) {
        String fit = Normalizer.normalize(name.strip(), Normalizer.Form.NFC);
        if (!NAME.matcher(fit).matches()) {
            throw new IllegalArgumentException("a name has 1 to 60 letters, digits, blanks and . _ @ ' -");
        }
        if (TAKEN.contains(fit.toLowerCase(Locale.ROOT))) {
            throw new IllegalArgumentException("'" + fit + "' is the name of a part of the service");
        }
        return fit;
    }

    private static void check(Collection<Role> roles) {
        if (roles.isEmpty()) {
            throw new IllegalArgumentException("choose at least one role");
        }
    }

    private <T> T within(String actor, Supplier<T> work) {
        return Objects.requireNonNull(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            return work.get();
        }));
    }
}
