package org.stook.app.queue;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.audit.AuditTrail;
import org.stook.orders.Actor;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;
import org.stook.orders.Runs;

/** The mark that a stack's subject is still mounted: its runs go before all others. */
@Component
public class OnTable {
    private final JdbcClient jdbc;
    private final Runs runs;
    private final AuditTrail audit;
    private final TransactionOperations transaction;

    public OnTable(JdbcClient jdbc, Runs runs, AuditTrail audit, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.runs = runs;
        this.audit = audit;
        this.transaction = transaction;
    }

    /** @return whether there is such a stack */
    public boolean mark(long stackId, boolean onTable, String actor) {
        return Boolean.TRUE.equals(transaction.execute(t -> {
            Actor.acts(jdbc, actor);
            int marked = jdbc.sql("update stook.stack set on_table = :value where id = :id")
                    .param("value", onTable)
                    .param("id", stackId)
                    .update();
            if (marked == 0) {
                return false;
            }
            audit.write(onTable ? "stack.ON-TABLE" : "stack.OFF-TABLE", "stack/" + stackId);
            int priority = onTable ? Priorities.ON_TABLE : Priorities.NORMAL;
            open(stackId).forEach(run -> runs.prioritise(run, priority, actor));
            return true;
        }));
    }

    private List<RunId> open(long stackId) {
        return jdbc.sql("select id from stook.run where stack_id = :id"
                        + " and state in ('READY', 'HELD', 'RUNNING', 'PUBLISHING') order by id")
                .param("id", stackId)
                .query((row, n) -> new RunId(row.getLong(1)))
                .list();
    }
}
