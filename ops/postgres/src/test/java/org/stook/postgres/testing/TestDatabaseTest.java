package org.stook.postgres.testing;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;

class TestDatabaseTest {
    @Test
    void eachCallGivesAnEmptyDatabaseOfAPostgresql18() throws SQLException {
        for (int i = 0; i < 2; i++) {
            TestDatabase database = TestDatabase.fresh(TestDatabaseTest.class);
            try (var c = database.dataSource().getConnection();
                    var s = c.createStatement()) {
                s.execute("create table once (n int)");
                assertThat(c.getMetaData().getDatabaseMajorVersion()).isEqualTo(18);
            }
        }
    }

    @Test
    void springsPropertiesAreHandedOver() {
        TestDatabase database = new TestDatabase("u", "n", "p");
        Map<String, Object> given = new TreeMap<>();
        database.register((name, value) -> given.put(name, value.get()));
        assertThat(given)
                .containsExactly(
                        Map.entry("spring.datasource.password", "p"),
                        Map.entry("spring.datasource.url", "u"),
                        Map.entry("spring.datasource.username", "n"));
    }
}
