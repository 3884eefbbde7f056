package org.stook.orders;

import org.springframework.jdbc.core.simple.JdbcClient;

/** Names who acts, for the audit entries of the running transaction. */
public final class Actor {
    private Actor() {}

    /** Holds until the transaction ends; without a transaction it has no effect. */
    public static void acts(JdbcClient jdbc, String name) {
        jdbc.sql("select set_config('stook.actor', :name, true)")
                .param("name", name)
                .query(String.class)
                .single();
    }
}
