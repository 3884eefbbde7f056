package org.stook.app.people;

import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;

/** How people come in: the first administrator by the set-up code, the others by a one-time code, then by password. */
@Component
public class Entry {
    /** Any number, the same in every service of the database. */
    private static final long FIRST_ADMINISTRATOR_LOCK = 7_305_114;

    private final JdbcClient jdbc;
    private final People people;
    private final Passwords passwords;
    private final AuditTrail audit;
    private final TransactionOperations transaction;

    public Entry(
            JdbcClient jdbc, People people, Passwords passwords, AuditTrail audit, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.people = people;
        this.passwords = passwords;
        this.audit = audit;
        this.transaction = transaction;
    }

    /**
     * Makes the first administrator.
     *
     * @return false if there is one already, and nothing was done
     * @throws IllegalArgumentException if the name or the password will not do
     */
    boolean first(String name, String password) {
        String fit = Rights.fit(name);
        String hash = passwords.hash(fit, password);
        return Boolean.TRUE.equals(transaction.execute(t -> {
            jdbc.sql("select pg_advisory_xact_lock(:lock)")
                    .param("lock", FIRST_ADMINISTRATOR_LOCK)
                    .query((row, n) -> 0)
                    .single();
            if (people.administered()) {
                return false;
            }
            Actor.acts(jdbc, "set-up");
            long id = jdbc.sql("insert into stook.person (name, roles, password) values (:name,"
                            + " array['ADMINISTRATOR'], :hash)"
                            + " on conflict (lower(name)) do update set roles = array['ADMINISTRATOR'],"
                            + " password = excluded.password, active = true, edition = person.edition + 1 returning id")
                    .param("name", fit)
                    .param("hash", hash)
                    .query(Long.class)
                    .single();
            audit.write("person.FIRST-ADMINISTRATOR", "person/" + id);
            return true;
        }));
    }

    /**
     * Takes the password that a person has chosen with a one-time code.
     *
     * @return false if the code is not that person's or holds no longer
     * @throws IllegalArgumentException if the password will not do; the code still holds then
     */
    public boolean choose(String name, String code, String password) {
        Optional<Person> who = people.named(name).filter(person -> person.active() && person.codeUntil() != null);
        if (who.isEmpty() || !fits(who.get().id(), code)) {
            return false;
        }
        return take(who.get(), code, passwords.hash(who.get().name(), password));
    }

    private boolean fits(long id, String code) {
        return jdbc.sql("select code_sha256 from stook.person where id = :id")
                .param("id", id)
                .query((row, n) -> OneTimeCode.matches(code, row.getString(1)))
                .single();
    }

    private boolean take(Person who, String code, String hash) {
        return Boolean.TRUE.equals(transaction.execute(t -> {
            Actor.acts(jdbc, who.name());
            int taken = jdbc.sql("update stook.person set password = :hash, code_sha256 = null, code_until = null,"
                            + " edition = edition + 1, changed_at = now()"
                            + " where id = :id and code_sha256 = :code and code_until > now()")
                    .param("hash", hash)
                    .param("id", who.id())
                    .param("code", OneTimeCode.sha256(code))
                    .update();
            if (taken == 1) {
                audit.write("person.PASSWORD-CHOSEN", "person/" + who.id());
            }
            return taken == 1;
        }));
    }

    /** Notes that somebody signed in. */
    public void came(long id, String name) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, name);
            jdbc.sql("update stook.person set signed_in_at = now() where id = :id")
                    .param("id", id)
                    .update();
            audit.write("person.SIGNED-IN", "person/" + id);
        });
    }

    /** Notes that so many attempts failed that further ones have to wait. */
    public void throttled(String from) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "service");
            audit.write("person.ATTEMPTS-THROTTLED", "address/" + from);
        });
    }
}
