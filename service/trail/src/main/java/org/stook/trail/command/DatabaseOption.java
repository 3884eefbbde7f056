package org.stook.trail.command;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** Where a database is. */
final class DatabaseOption {
    @Option(
            names = "--database",
            paramLabel = "URL",
            description = "JDBC address, such as jdbc:postgresql://host/stook")
    @Nullable
    String url;

    @Option(
            names = "--user",
            paramLabel = "NAME",
            description = "role that may read the trail, such as a member of stook_ro; its password in PGPASSWORD")
    String user = "stook";

    Connection connect() throws SQLException {
        return DriverManager.getConnection(
                java.util.Objects.requireNonNull(url),
                user,
                java.util.Objects.requireNonNullElse(System.getenv("PGPASSWORD"), ""));
    }
}
