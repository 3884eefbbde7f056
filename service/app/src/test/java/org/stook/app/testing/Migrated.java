package org.stook.app.testing;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.migrations.Schema;
import org.stook.postgres.testing.TestDatabase;

/** Databases with the whole schema: a service on one has nothing left to migrate. */
public final class Migrated {
    private Migrated() {}

    /** Makes the class's database anew. */
    public static TestDatabase database(Class<?> test) {
        return TestDatabase.filled(test, Schema::migrate);
    }

    /** The same database as its owner sees it, who may do what the service's login may not. */
    public static JdbcClient owner(JdbcClient service) {
        String name =
                service.sql("select current_database()").query(String.class).single();
        return JdbcClient.create(TestDatabase.named(name).dataSource());
    }
}
