package org.stook.app.stack;

import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.app.audit.AuditTrail;

/**
 * Versions of a stack. Its frames are fixed once it is sealed; another frame makes another version, which takes all its files
 * along and takes its place when it is sealed itself. All in the caller's transaction.
 */
@Component
public class Versions {
    private final JdbcClient jdbc;
    private final AuditTrail audit;

    public Versions(JdbcClient jdbc, AuditTrail audit) {
        this.jdbc = jdbc;
        this.audit = audit;
    }

    /**
     * The version of a stack that still takes frames: itself, the next one if it is open already, else a fresh one.
     *
     * @param stack any version
     */
    public long open(long stack) {
        jdbc.sql(
                        "select id from stook.stack where id = (select coalesce(origin_id, id) from stook.stack where id = :id) for update")
                .param("id", stack)
                .query(Long.class)
                .single();
        return jdbc.sql("""
                        select v.id from stook.stack s join stook.stack v on coalesce(v.origin_id, v.id) = coalesce(s.origin_id, s.id)
                        where s.id = :id and v.state = 'COLLECTING' order by v.version desc limit 1""").param("id", stack).query(Long.class).optional().orElseGet(() -> fresh(stack));
    }

    private long fresh(long stack) {
        long next = jdbc.sql("""
                        insert into stook.stack (station_id, subject, view_name, folder, on_table, reference_ordinal, codes, named,
                          version, origin_id)
                        select s.station_id, s.subject, s.view_name, s.folder, s.on_table, null, s.codes, true,
                          (select max(v.version) + 1 from stook.stack v where coalesce(v.origin_id, v.id) = coalesce(s.origin_id, s.id)),
                          coalesce(s.origin_id, s.id)
                        from stook.stack s where s.id = :id returning id""").param("id", stack).query(Long.class).single();
        move(stack, next);
        audit.write("stack.NEXT-VERSION", "stack/" + next);
        return next;
    }

    /** Hands the files of one version to another. */
    void move(long from, long to) {
        jdbc.sql("update stook.intake_file set stack_id = :to where stack_id = :from")
                .param("from", from)
                .param("to", to)
                .update();
    }
}
