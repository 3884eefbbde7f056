package org.stook.postgres.testing;

import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.Locale;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.postgresql.ds.PGSimpleDataSource;

/**
 * A fresh, empty database of a real PostgreSQL for one test class; the server is one a test JVM.
 *
 * <p>Without Spring: {@code TestDatabase db = TestDatabase.fresh(MyTest.class)}. With Spring:
 * {@snippet :
 * @DynamicPropertySource
 * static void database(DynamicPropertyRegistry registry) {
 *     TestDatabase.fresh(MyTest.class).register(registry::add);
 * }
 * }
 *
 * @param url JDBC address
 * @param username owner of the database
 * @param password the owner's password
 */
public record TestDatabase(String url, String username, String password) {

    private static @Nullable TestDatabase filled;

    /** Makes the class's database anew. */
    public static TestDatabase fresh(Class<?> test) {
        return made(test, "");
    }

    /** To which nobody may be connected. */
    private TestDatabase copy(Class<?> test) {
        return made(test, " template " + url.replaceFirst("^.*/([^/?]+).*$", "$1"));
    }

    /**
     * The class's database, filled like one that is filled once a test JVM, which takes a fraction of the time.
     *
     * @param filling the same for all that ask
     */
    public static synchronized TestDatabase filled(Class<?> test, Consumer<DataSource> filling) {
        if (filled == null) {
            TestDatabase first = fresh(TestDatabase.class);
            filling.accept(first.dataSource());
            filled = first;
        }
        return filled.copy(test);
    }

    /** One that is there. */
    public static TestDatabase named(String name) {
        TestServer server = TestServer.get();
        String url = server.url().replaceFirst("/[^/?]+(\\?|$)", "/" + name + "$1");
        return new TestDatabase(url, server.username(), server.password());
    }

    private static TestDatabase made(Class<?> test, String how) {
        TestServer server = TestServer.get();
        String name = test.getName().replaceAll("[^A-Za-z0-9]", "_").toLowerCase(Locale.ROOT);
        name = name.substring(Math.max(0, name.length() - 60));
        try (Connection c = DriverManager.getConnection(server.url(), server.username(), server.password());
                Statement s = c.createStatement()) {
            s.execute("drop database if exists " + name + " with (force)");
            s.execute("create database " + name + how);
        } catch (SQLException e) {
            throw new IllegalStateException("no database for " + test.getName() + ": " + e.getMessage(), e);
        }
        return named(name);
    }

    /** A data source without a pool: a connection a call. */
    public DataSource dataSource() {
        PGSimpleDataSource source = new PGSimpleDataSource();
        source.setUrl(url);
        source.setUser(username);
        source.setPassword(password);
        return source;
    }

    /** Hands Spring's data source properties to a registry's {@code add}. */
    public void register(BiConsumer<String, Supplier<Object>> registry) {
        registry.accept("spring.datasource.url", () -> url);
        registry.accept("spring.datasource.username", () -> username);
        registry.accept("spring.datasource.password", () -> password);
    }
}
