package org.stook.app.desk;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.archive.bag.Packages;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;

/** Notes in the audit trail who took what away. */
@Component
class Handouts {
    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final AuditTrail audit;

    Handouts(JdbcClient jdbc, TransactionOperations transaction, AuditTrail audit) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.audit = audit;
    }

    void note(Packages.Package order, String actor) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, actor);
            if (order.runs().size() == 1) {
                audit.write("run.PULLED", "run/" + order.runs().get(0));
            } else {
                audit.write("package.PULLED", "package/" + order.id());
            }
        });
    }
}
