package org.stook.migrations;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;

/**
 * The login of service and workers. It is in role {@code stook_rw}: it may do their work, and add to what only grows, such as
 * the audit trail; it can neither change that nor lift the triggers that guard it, as the owner of the tables could.
 */
public final class WorkingLogin {
    private WorkingLogin() {}

    /**
     * Makes the login or gives it this password and its rights. Where the owner may not make roles, the login must be there.
     *
     * @param owner data source of the role that owns the schema, which has been migrated
     * @throws IllegalArgumentException if the login is the owner's own or one that may do anything
     * @throws IllegalStateException with what the database's administrator has to do
     */
    public static void ensure(DataSource owner, String name, String password) {
        try (Connection connection = owner.getConnection()) {
            check(connection, name);
            boolean there = is(connection, "select exists (select 1 from pg_roles where rolname = ?)", name);
            if (is(connection, "select rolsuper or rolcreaterole from pg_roles where rolname = current_user")) {
                make(connection, there ? "alter" : "create", name, password);
            } else if (!there || !is(connection, "select pg_has_role(?, 'stook_rw', 'member')", name)) {
                throw new IllegalStateException(
                        "the owner of the schema may not make roles, and login %s is not there or not in role stook_rw; as the"
                                        .formatted(name)
                                + " database's administrator: create role %s login password '...' in role stook_rw"
                                        .formatted(name));
            }
            run(connection, "select stook.grant_roles()");
        } catch (SQLException e) {
            throw new IllegalStateException("login " + name + " cannot be made ready: " + e.getMessage(), e);
        }
    }

    /** Whether whoever is connected could take entries out of the audit trail. */
    public static boolean mayChangeTheTrail(DataSource source) {
        try (Connection connection = source.getConnection()) {
            return is(connection, "select has_table_privilege('stook.audit_entry', 'DELETE')");
        } catch (SQLException e) {
            throw new IllegalStateException("the rights on the audit trail cannot be read: " + e.getMessage(), e);
        }
    }

    private static void check(Connection connection, String name) throws SQLException {
        if (is(connection, "select current_user = ?", name)) {
            throw new IllegalArgumentException(
                    "service and workers log in as %s, who owns the schema and could change the audit trail; give them a login of"
                                    .formatted(name)
                            + " their own (spring.datasource.username)");
        }
        if (is(connection, "select exists (select 1 from pg_roles where rolname = ? and rolsuper)", name)) {
            throw new IllegalArgumentException(
                    "service and workers log in as %s, who may do anything in this database server; give them a login of their own"
                            .formatted(name));
        }
    }

    private static void make(Connection connection, String verb, String name, String password) throws SQLException {
        String sql;
        // Names and passwords cannot be parameters of such statements; the database itself quotes them.
        try (PreparedStatement quoting = connection.prepareStatement(
                "select format('" + verb + " role %I login password %L; grant stook_rw to %1$I', ?, ?)")) {
            quoting.setString(1, name);
            quoting.setString(2, password);
            try (ResultSet row = quoting.executeQuery()) {
                row.next();
                sql = row.getString(1);
            }
        }
        run(connection, sql);
    }

    private static boolean is(Connection connection, String sql, String... values) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            for (int i = 0; i < values.length; i++) {
                statement.setString(i + 1, values[i]);
            }
            try (ResultSet row = statement.executeQuery()) {
                return row.next() && row.getBoolean(1);
            }
        }
    }

    private static void run(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }
}
