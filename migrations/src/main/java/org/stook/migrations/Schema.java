package org.stook.migrations;

import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;

/**
 * The schema this release knows. Service, tests and the one-shot before a roll-out all migrate through here, so that
 * location and history table cannot differ.
 */
public final class Schema {
    /**
     * Number of the newest migration. No constant to the compiler: a program that was not compiled anew after a migration was added
     * would go on with the number of then, and pause.
     */
    public static final int NEWEST = Integer.parseInt("26");

    /** Oldest schema this release's programs can work on. */
    public static final int OLDEST = 22;

    private Schema() {}

    /**
     * Flyway for the database, history in {@code stook.flyway_schema_history}.
     *
     * @param owner data source of the role that owns the schema
     */
    public static Flyway flyway(DataSource owner) {
        return Flyway.configure()
                .dataSource(owner)
                .locations("classpath:db/migration")
                .defaultSchema("stook")
                // A migration that cannot get its lock gives up rather than stopping every worker behind it.
                .initSql("set lock_timeout = '3s'")
                .load();
    }

    /**
     * Brings the database to {@link #NEWEST}; does nothing when it is there.
     *
     * @return how many migrations were run
     */
    public static int migrate(DataSource owner) {
        int run = flyway(owner).migrate().migrationsExecuted;
        if (run > 0) {
            grant(owner);
        }
        return run;
    }

    /** Tables that later migrations added are for the roles too. Not a callback, which would want a third connection. */
    private static void grant(DataSource owner) {
        try (Connection connection = owner.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute("select stook.grant_roles()");
        } catch (SQLException e) {
            throw new IllegalStateException(
                    "the schema is migrated, but its roles got no rights: " + e.getMessage(), e);
        }
    }
}
