package org.stook.app.queue;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Runs and troubles for display. */
@Component
public class Board {
    /**
     * @param state as in the table of transitions
     * @param stage where a running one is; fraction of the whole, 0 to 1
     * @param host of the worker that has it
     * @param reason why it stands as it does; of a waiting one only if it waits for more than its turn
     * @param since when it came into this state
     * @param priority as aged by waiting
     */
    public record Run(
            long id,
            long stackId,
            String subject,
            String station,
            String state,
            @Nullable String stage,
            double fraction,
            int attempt,
            @Nullable String host,
            @Nullable String reason,
            Instant since,
            int priority,
            boolean cancelRequested,
            long frames) {
        /** The same, but for how far it is, which open pages are told apart from it. */
        public Run standing() {
            return new Run(
                    id,
                    stackId,
                    subject,
                    station,
                    state,
                    null,
                    0,
                    attempt,
                    host,
                    reason,
                    since,
                    priority,
                    cancelRequested,
                    frames);
        }
    }

    /**
     * How far a run is.
     *
     * @param fraction of the whole, 0 to 1
     */
    public record Progress(long run, @Nullable String stage, double fraction) {}

    /** A share that is not as it should be. */
    public record Trouble(
            String share, String state, @Nullable String text) {}

    /** A file whose end never came; no stack (0) if it is not known to which it belongs. */
    public record Cut(long stackId, String subject, String station, String reason) {}

    /** Of those that need a person: who settles one sees the next. */
    static final int MOST_SHOWN = 50;

    static final String COLUMNS = """
            select r.id, r.stack_id, s.subject, t.name, r.state, r.stage, coalesce(r.fraction, 0), r.attempt, w.host,
              coalesce(case when r.state = 'READY' and p.state <> 'OK' then 'Waits until share “' || p.name || '” is well again.' end,
                r.reason_text), case when r.state = 'READY' then r.queued_at else r.changed_at end,
              coalesce(k.priority, r.priority), r.cancel_requested,
              (select count(*) from stook.stack_frame f where f.stack_id = s.id and f.role = 'SWEEP')
            """;
    static final String WHOSE = """
            join stook.stack s on s.id = r.stack_id join stook.station t on t.id = s.station_id
            join stook.share p on p.id = coalesce(t.publish_share_id, t.intake_share_id)
            left join stook.worker w on w.id = r.worker_id
            """;
    static final String TASK =
            "left join jobs.scheduled_tasks k on k.task_name = 'run' and k.task_instance = r.id::text ";
    private static final String SELECT = COLUMNS + "from stook.run r " + WHOSE + TASK;

    private final JdbcClient jdbc;

    public Board(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public List<Run> running() {
        return runs("where r.state in ('RUNNING', 'PUBLISHING') order by r.id");
    }

    /** Those that go no further by themselves, and that nobody has run again since. */
    public List<Run> stuck() {
        return runs("where " + Needs.STUCK + " order by r.changed_at desc, r.id desc limit " + MOST_SHOWN);
    }

    public List<Run> ofStack(long stackId) {
        return jdbc.sql(SELECT + "where r.stack_id = :stack order by r.id desc")
                .param("stack", stackId)
                .query((row, n) -> run(row))
                .list();
    }

    public Optional<Run> find(long id) {
        return jdbc.sql(SELECT + "where r.id = :id")
                .param("id", id)
                .query((row, n) -> run(row))
                .optional();
    }

    private List<Run> runs(String which) {
        return jdbc.sql(SELECT + which).query((row, n) -> run(row)).list();
    }

    static Run run(ResultSet row) throws SQLException {
        return new Run(
                row.getLong(1),
                row.getLong(2),
                row.getString(3),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                row.getDouble(7),
                row.getInt(8),
                row.getString(9),
                row.getString(10),
                row.getObject(11, OffsetDateTime.class).toInstant(),
                row.getInt(12),
                row.getBoolean(13),
                row.getLong(14));
    }

    public List<Trouble> shares() {
        return jdbc.sql("select name, state, state_text from stook.share where state <> 'OK' order by name")
                .query((row, n) -> new Trouble(row.getString(1), row.getString(2), row.getString(3)))
                .list();
    }

    /** Of the last twelve hours: later than that the subject is off the table anyway. */
    public List<Cut> cut() {
        return jdbc.sql("""
                        select coalesce(s.id, 0), coalesce(s.subject, f.rel_path), t.name, f.reason from stook.intake_file f
                        join stook.station t on t.id = f.station_id
                        left join stook.stack s on s.id = f.stack_id
                        """ + "where " + Needs.CUT + " order by f.id desc limit :most")
                .param("most", MOST_SHOWN)
                .query((row, n) -> new Cut(row.getLong(1), row.getString(2), row.getString(3), row.getString(4)))
                .list();
    }

    /**
     * Differs whenever the page would, but for how far runs are. Rows are told by their newest numbers together: one with a smaller
     * number may be committed after one with a greater. The order by number is what keeps this cheap over any number of rows.
     */
    public String fingerprint() {
        return jdbc.sql("""
                        select concat_ws('/',
                          (select max(id) || '+' || sum(id) from (select id from stook.audit_entry order by id desc limit 500) a),
                          (select max(id) || '+' || sum(id) from (select id from stook.intake_file order by id desc limit 500) f),
                          (select max(id) || '+' || sum(id) from (select id from stook.stack order by id desc limit 100) s),
                          (select string_agg(concat_ws(':', id, question, md5(word_so_far::text)), ',' order by id) from stook.stack
                            where state = 'COLLECTING'),
                          (select string_agg(concat_ws(':', id, cancel_requested), ',' order by id)
                            from stook.run where state in ('RUNNING', 'PUBLISHING')),
                          (select string_agg(concat_ws(':', id, state, pause_reason), ',' order by id) from stook.worker
                            where state <> 'GONE'),
                          (select string_agg(state, ',' order by id) from stook.share))""").query(String.class).single();
    }

    /** How far every run at work is. */
    public List<Progress> progress() {
        return jdbc.sql(
                        "select id, stage, coalesce(fraction, 0) from stook.run where state in ('RUNNING', 'PUBLISHING')"
                                + " order by id")
                .query((row, n) -> new Progress(row.getLong(1), row.getString(2), row.getDouble(3)))
                .list();
    }
}
