package org.stook.app.testing;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.migrations.Schema;
import org.stook.postgres.testing.TestDatabase;

/** Databases with the whole schema, copied from one that was migrated once: a service on one has nothing left to migrate. */
public final class Migrated {
    private static final TestDatabase ONCE = TestDatabase.fresh(Migrated.class);

    static {
        Schema.migrate(ONCE.dataSource());
    }

    private Migrated() {}

    /** Makes the class's database anew. */
    public static TestDatabase database(Class<?> test) {
        return ONCE.copy(test);
    }

    /** The same database as its owner sees it, who may do what the service's login may not. */
    public static JdbcClient owner(JdbcClient service) {
        String name =
                service.sql("select current_database()").query(String.class).single();
        String url = ONCE.url().replaceFirst("/[^/?]+(\\?|$)", "/" + name + "$1");
        return JdbcClient.create(new TestDatabase(url, ONCE.username(), ONCE.password()).dataSource());
    }
}
