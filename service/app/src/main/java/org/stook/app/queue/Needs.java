package org.stook.app.queue;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** What needs a person, all of it counted, however much of it is shown. */
@Component
public class Needs {
    /**
     * @param stuck runs that go no further by themselves
     * @param sentBack composites that somebody sent back and nobody has made again
     * @param asking stacks with a question
     * @param cut files whose end never came
     * @param shares that are not as they should be
     */
    public record Count(long stuck, long sentBack, long asking, long cut, long shares) {
        public long all() {
            return stuck + sentBack + asking + cut + shares;
        }
    }

    /** A composite that somebody sent back. */
    public record SentBack(
            long stackId, String subject, String station, long runId, String reason, String actor, Instant at) {}

    /** Runs r that go no further by themselves, and that nobody has run again since. */
    static final String STUCK = """
            r.state in ('HELD', 'FAILED', 'QUARANTINED')
              and not exists (select 1 from stook.run l where l.stack_id = r.stack_id and l.id > r.id)""";

    /** Reviews v of runs r that count, and that nobody has answered by another run. */
    static final String SENT_BACK = """
            v.verdict = 'SENT_BACK' and r.state = 'PUBLISHED'
              and not exists (select 1 from stook.review n where n.run_id = v.run_id and n.id > v.id)
              and not exists (select 1 from stook.run l where l.stack_id = r.stack_id and l.id > r.id and l.state <> 'CANCELLED')""";

    /** Files f; later than twelve hours the subject is off the table anyway. */
    static final String CUT = """
            f.state = 'INCOMPLETE' and f.missing_since is null and f.last_change > now() - interval '12 hours'""";

    private final JdbcClient jdbc;

    public Needs(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Count count() {
        return jdbc.sql("select (select count(*) from stook.run r where " + STUCK + "),"
                        + " (select count(*) from stook.review v join stook.run r on r.id = v.run_id where " + SENT_BACK
                        + "), (select count(*) from stook.stack where state = 'COLLECTING' and question is not null),"
                        + " (select count(*) from stook.intake_file f where " + CUT + "),"
                        + " (select count(*) from stook.share where state <> 'OK')")
                .query((row, n) ->
                        new Count(row.getLong(1), row.getLong(2), row.getLong(3), row.getLong(4), row.getLong(5)))
                .single();
    }

    /** The longest waiting first: somebody is to make it again. */
    public List<SentBack> sentBack() {
        return jdbc.sql("""
                        select s.id, s.subject, t.name, r.id, v.reason, v.actor, v.at from stook.review v
                        join stook.run r on r.id = v.run_id join stook.stack s on s.id = r.stack_id
                        join stook.station t on t.id = s.station_id where """ + " " + SENT_BACK + " order by v.id limit :most")
                .param("most", Board.MOST_SHOWN)
                .query((row, n) -> new SentBack(
                        row.getLong(1),
                        row.getString(2),
                        row.getString(3),
                        row.getLong(4),
                        row.getString(5),
                        row.getString(6),
                        row.getObject(7, OffsetDateTime.class).toInstant()))
                .list();
    }
}
