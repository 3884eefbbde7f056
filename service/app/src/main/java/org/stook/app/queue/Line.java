package org.stook.app.queue;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** The runs that wait, in the order in which they are taken, a page at a time, and how fast they go. */
@Component
public class Line {
    /** How many runs a page shows. */
    public static final int PAGE = 50;

    private static final Duration LATELY = Duration.ofHours(2);
    private static final Pattern PLACE = Pattern.compile("(\\d{1,3})\\.(\\d{1,18})\\.(\\d{1,18})");

    private static final Pattern NUMBER = Pattern.compile("\\d{1,18}");

    /** @param next place to go on from, null if this is all */
    public record Page(List<Board.Run> runs, @Nullable String next) {}

    /**
     * @param waiting how many runs wait
     * @param oldest since when the longest waiting one waits
     * @param today published since midnight in the studio's zone
     * @param perHour published in an hour, on the average of the last two
     * @param emptyAt when nothing would wait any more at the rate of the last two hours; null if nothing waits or nothing moved
     */
    public record Flow(
            long waiting,
            @Nullable Instant oldest,
            long today,
            double perHour,
            @Nullable Instant emptyAt) {}

    private record Placed(Board.Run run, String place) {}

    private final JdbcClient jdbc;

    public Line(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param after the place that the page before ended with; empty or unreadable: from the front */
    public Page page(Wanted wanted, String after) {
        return wanted.inLine() ? inLine(wanted, after) : newestFirst(wanted, after);
    }

    private Page inLine(Wanted wanted, String after) {
        Matcher place = PLACE.matcher(after);
        boolean on = place.matches();
        Wanted.Condition condition = wanted.condition();
        return page(
                jdbc.sql(Board.COLUMNS + """
                        , k.priority || '.' || (extract(epoch from k.execution_time) * 1000000)::bigint || '.' || k.task_instance
                        from jobs.scheduled_tasks k join stook.run r on r.id = k.task_instance::bigint
                        """ + Board.WHOSE + "where k.task_name = 'run' and " + condition.sql() + """

                          and (not :on or k.priority < :priority or (k.priority = :priority
                            and (k.execution_time, k.task_instance) > (to_timestamp(0) + :micros * interval '1 microsecond', :run)))
                        order by k.priority desc, k.execution_time, k.task_instance limit :most""")
                        .params(condition.parameters())
                        .param("on", on)
                        .param("priority", on ? Integer.parseInt(place.group(1)) : 0)
                        .param("micros", on ? Long.parseLong(place.group(2)) : 0)
                        .param("run", on ? place.group(3) : ""));
    }

    private Page newestFirst(Wanted wanted, String after) {
        Wanted.Condition condition = wanted.condition();
        return page(jdbc.sql(Board.COLUMNS + ", r.id::text from stook.run r " + Board.WHOSE + Board.TASK
                        + "where r.id < :before and " + condition.sql() + " order by r.id desc limit :most")
                .params(condition.parameters())
                .param("before", NUMBER.matcher(after).matches() ? Long.parseLong(after) : Long.MAX_VALUE));
    }

    private static Page page(JdbcClient.StatementSpec statement) {
        List<Placed> found = statement
                .param("most", PAGE + 1)
                .query((row, n) -> new Placed(Board.run(row), row.getString(15)))
                .list();
        boolean more = found.size() > PAGE;
        List<Placed> shown = more ? found.subList(0, PAGE) : found;
        return new Page(
                shown.stream().map(Placed::run).toList(),
                more ? shown.get(PAGE - 1).place() : null);
    }

    /** @param zone of the studio, for where a day begins */
    public Flow flow(ZoneId zone) {
        Instant midnight = LocalDate.now(zone).atStartOfDay(zone).toInstant();
        return jdbc.sql("""
                        select (select count(*) from stook.run where state = 'READY'),
                          (select min(queued_at) from stook.run where state = 'READY'),
                          (select count(*) from stook.publication where published_at >= :midnight),
                          (select count(*) from stook.publication where published_at > now() - make_interval(secs => :lately)),
                          now()""")
                .param("midnight", midnight.atOffset(java.time.ZoneOffset.UTC))
                .param("lately", LATELY.toSeconds())
                .query((row, n) -> {
                    OffsetDateTime oldest = row.getObject(2, OffsetDateTime.class);
                    long waiting = row.getLong(1);
                    long lately = row.getLong(4);
                    Instant now = row.getObject(5, OffsetDateTime.class).toInstant();
                    return new Flow(
                            waiting,
                            oldest == null ? null : oldest.toInstant(),
                            row.getLong(3),
                            (double) lately / LATELY.toHours(),
                            waiting == 0 || lately == 0
                                    ? null
                                    : now.plusSeconds(LATELY.toSeconds() * waiting / lately));
                })
                .single();
    }
}
