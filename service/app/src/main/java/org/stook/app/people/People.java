package org.stook.app.people;

import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Who there is. What is changed goes through {@link Rights} and {@link Entry}. */
@Component
public class People {
    private static final String SELECT = "select id, name, roles, active, password is not null,"
            + " case when code_until > now() then code_until end, signed_in_at, edition from stook.person ";

    private final JdbcClient jdbc;

    public People(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public List<Person> all() {
        return jdbc.sql(SELECT + "order by not active, lower(name)")
                .query((row, n) -> person(row))
                .list();
    }

    public Optional<Person> find(long id) {
        return jdbc.sql(SELECT + "where id = :id")
                .param("id", id)
                .query((row, n) -> person(row))
                .optional();
    }

    /** Upper and lower case are the same. */
    public Optional<Person> named(String name) {
        return jdbc.sql(SELECT + "where lower(name) = lower(:name)")
                .param("name", name.strip())
                .query((row, n) -> person(row))
                .optional();
    }

    /** The hash of a person's password, null until one is chosen. */
    public @Nullable String hash(long id) {
        return jdbc.sql("select password from stook.person where id = :id")
                .param("id", id)
                .query((row, n) -> Optional.ofNullable(row.getString(1)))
                .single()
                .orElse(null);
    }

    /** Whether somebody can sign in who may let others in. */
    public boolean administered() {
        return jdbc.sql("select exists (select 1 from stook.person"
                        + " where active and password is not null and 'ADMINISTRATOR' = any(roles))")
                .query(Boolean.class)
                .single();
    }

    static String[] words(Collection<Role> roles) {
        return EnumSet.copyOf(roles).stream().map(Role::name).toArray(String[]::new);
    }

    private static Person person(ResultSet row) throws SQLException {
        Array roles = row.getArray(3);
        return new Person(
                row.getLong(1),
                row.getString(2),
                Stream.of((String[]) roles.getArray())
                        .map(Role::valueOf)
                        .sorted()
                        .toList(),
                row.getBoolean(4),
                row.getBoolean(5),
                instant(row.getObject(6, OffsetDateTime.class)),
                instant(row.getObject(7, OffsetDateTime.class)),
                row.getInt(8));
    }

    private static @Nullable Instant instant(@Nullable OffsetDateTime time) {
        return time == null ? null : time.toInstant();
    }
}
