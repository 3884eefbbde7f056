package org.stook.app.stack;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;

/** A person says what a stack shows, where its label could not. */
@Component
public class Naming {
    private static final int LONGEST = 120;

    private final JdbcClient jdbc;
    private final AuditTrail audit;
    private final TransactionOperations transaction;

    public Naming(JdbcClient jdbc, AuditTrail audit, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.audit = audit;
        this.transaction = transaction;
    }

    /**
     * Names a collecting stack and settles its question; the intake seals it when its frames are together.
     *
     * @return whether there is such a stack and it still collects
     * @throws IllegalArgumentException if the name cannot be one; the sentence says why
     */
    public boolean name(long stack, String subject, String view, String actor) {
        String name = subject.strip();
        if (name.isEmpty() || name.length() > LONGEST || name.chars().anyMatch(Character::isISOControl)) {
            throw new IllegalArgumentException(
                    "the subject: found %d characters, expected 1 to %d, no control characters"
                            .formatted(name.length(), LONGEST));
        }
        return Boolean.TRUE.equals(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            int named = jdbc.sql("""
                            update stook.stack set subject = :subject, view_name = nullif(:view, ''), named = true, question = null,
                              reason = null where id = :id and state = 'COLLECTING'""")
                    .param("subject", name)
                    .param("view", view.strip())
                    .param("id", stack)
                    .update();
            if (named == 1) {
                audit.write("stack.NAMED", "stack/" + stack);
            }
            return named == 1;
        }));
    }
}
