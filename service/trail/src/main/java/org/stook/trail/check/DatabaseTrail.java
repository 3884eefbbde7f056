package org.stook.trail.check;

import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Entry;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;

/** The trail in a database, read row by row in one snapshot. */
public final class DatabaseTrail {
    private static final int ROWS = 5_000;

    private final Connection connection;

    /** @param connection for this alone; read only from here on */
    public DatabaseTrail(Connection connection) throws SQLException {
        this.connection = connection;
        // A cursor instead of all rows at once needs a transaction; its snapshot shows entries and leaves of one
        // moment.
        connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        connection.setReadOnly(true);
        connection.setAutoCommit(false);
    }

    public EntrySource entries() throws IOException {
        Rows rows = new Rows(
                "select id, xid::text, cast(extract(epoch from at) * 1000000 as bigint), actor, kind, subject, body::text"
                        + " from stook.audit_entry order by id");
        return new EntrySource() {
            @Override
            public @Nullable Entry next() throws IOException {
                return rows.next(row -> new Entry(
                        row.getLong(1),
                        row.getString(2),
                        Instant.EPOCH.plus(row.getLong(3), ChronoUnit.MICROS),
                        row.getString(4),
                        row.getString(5),
                        row.getString(6),
                        row.getString(7)));
            }

            @Override
            public void close() throws IOException {
                rows.close();
            }
        };
    }

    /** As the database itself has them. */
    public LeafSource leaves() throws IOException {
        Rows rows = new Rows("select entry_id, hash from stook.audit_leaf order by position");
        return new LeafSource() {
            @Override
            public @Nullable SealedLeaf next() throws IOException {
                return rows.next(row -> new SealedLeaf(row.getLong(1), Hash.of(row.getBytes(2))));
            }

            @Override
            public void close() throws IOException {
                rows.close();
            }
        };
    }

    private interface Reading<T> {
        T of(ResultSet row) throws SQLException;
    }

    private final class Rows {
        private final Statement statement;
        private final ResultSet rows;

        Rows(String sql) throws IOException {
            try {
                statement = connection.createStatement();
                statement.setFetchSize(ROWS);
                rows = statement.executeQuery(sql);
            } catch (SQLException e) {
                throw new IOException("the database gives no audit trail: " + e.getMessage(), e);
            }
        }

        <T> @Nullable T next(Reading<T> reading) throws IOException {
            try {
                return rows.next() ? reading.of(rows) : null;
            } catch (SQLException e) {
                throw new IOException("the audit trail cannot be read to its end: " + e.getMessage(), e);
            }
        }

        void close() throws IOException {
            try {
                statement.close();
            } catch (SQLException e) {
                throw new IOException(e);
            }
        }
    }
}
