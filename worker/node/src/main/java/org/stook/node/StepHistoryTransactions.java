package org.stook.node;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.springframework.jdbc.support.JdbcTransactionManager;
import org.springframework.transaction.TransactionDefinition;

/**
 * Transactions of the step history, whose commits do not wait for the disk: some twenty a run. Nothing is decided by them,
 * and a database that crashes loses the last fraction of a second; what was committed before a fence is on disk with it.
 */
final class StepHistoryTransactions extends JdbcTransactionManager {
    private static final long serialVersionUID = 1;

    StepHistoryTransactions(DataSource source) {
        super(source);
    }

    @Override
    protected void prepareTransactionalConnection(Connection connection, TransactionDefinition definition)
            throws SQLException {
        super.prepareTransactionalConnection(connection, definition);
        try (Statement statement = connection.createStatement()) {
            statement.execute("set local synchronous_commit to off");
        }
    }
}
