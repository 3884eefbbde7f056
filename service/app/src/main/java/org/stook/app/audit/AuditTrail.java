package org.stook.app.audit;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Collection;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The audit entries, oldest first. */
@Component
public class AuditTrail {
    /**
     * @param kind such as {@code run.READY-RUNNING}
     * @param subject such as {@code run/17}
     * @param body details as a JSON object
     */
    public record Entry(long id, Instant at, String actor, String kind, String subject, String body) {}

    private final JdbcClient jdbc;

    public AuditTrail(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The newest entries on any of the subjects. */
    public List<Entry> about(Collection<String> subjects, int limit) {
        return jdbc.sql("""
                        select * from (select id, at, actor, kind, subject, body::text from stook.audit_entry
                          where subject = any(:subjects) order by id desc limit :limit) newest order by id""")
                .param("subjects", subjects.toArray(String[]::new))
                .param("limit", limit)
                .query(AuditTrail::entry)
                .list();
    }

    /** All entries on any of the subjects up to that one, oldest first. */
    public List<Entry> upTo(long id, Collection<String> subjects) {
        return jdbc.sql("""
                        select id, at, actor, kind, subject, body::text from stook.audit_entry
                        where subject = any(:subjects) and id <= :id order by id""")
                .param("subjects", subjects.toArray(String[]::new))
                .param("id", id)
                .query(AuditTrail::entry)
                .list();
    }

    private static Entry entry(ResultSet row, int n) throws SQLException {
        return new Entry(
                row.getLong(1),
                row.getObject(2, OffsetDateTime.class).toInstant(),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getString(6));
    }

    /** Likewise with details. @param body a JSON object */
    public void write(String kind, String subject, String body) {
        jdbc.sql("select stook.write_audit(:kind, :subject, cast(:body as jsonb))")
                .param("kind", kind)
                .param("subject", subject)
                .param("body", body)
                .query(Long.class)
                .single();
    }

    /** Records an act that is no transition, in the caller's transaction and under its actor. */
    public void write(String kind, String subject) {
        jdbc.sql("select stook.write_audit(:kind, :subject)")
                .param("kind", kind)
                .param("subject", subject)
                .query(Long.class)
                .single();
    }
}
