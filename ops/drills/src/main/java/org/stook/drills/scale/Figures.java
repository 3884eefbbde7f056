package org.stook.drills.scale;

import java.util.Arrays;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.orders.RunId;

/** Figures read from the tables. */
final class Figures {
    private static final int SAMPLES = 200;

    private final JdbcClient jdbc;

    Figures(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** The statement that db-scheduler sends for one slot (16.12.0), timed by the server in a transaction that is rolled back. */
    double[] claimMillis() {
        double[] millis = new double[SAMPLES];
        for (int i = 0; i < SAMPLES; i++) {
            String plan = String.join("\n", jdbc.sql("""
                            explain (analyze, timing off) select * from jobs.scheduled_tasks
                            where picked = false and execution_time <= now() order by priority desc, execution_time asc
                            limit 1 for update skip locked""").query(String.class).list());
            millis[i] = Double.parseDouble(plan.replaceAll("(?s).*Execution Time: ([0-9.]+) ms.*", "$1"));
        }
        Arrays.sort(millis);
        return millis;
    }

    /** Seconds from order to start. */
    double[] waited(List<RunId> runs) {
        return jdbc.sql("""
                        select extract(epoch from a.started_at - r.created_at)::float8 from stook.run r
                        join stook.attempt a on a.run_id = r.id and a.n = 1 where r.id in (:runs)""").param("runs", ids(runs)).query(Double.class).list().stream()
                .mapToDouble(Double::doubleValue)
                .sorted()
                .toArray();
    }

    /** How many runs of lower priority were begun between a run's order and its start, at most. */
    int overtaken(List<RunId> runs) {
        return jdbc.sql("""
                        select coalesce(max(n), 0)::int from (select (select count(*) from stook.attempt b join stook.run q on q.id = b.run_id
                            where b.started_at > r.created_at and b.started_at < a.started_at and q.priority < 100) as n
                          from stook.run r join stook.attempt a on a.run_id = r.id and a.n = 1 where r.id in (:runs)) o""").param("runs", ids(runs)).query(Integer.class).single();
    }

    /** Of those begun: how many of each given priority, and the longest simulated wait. */
    String byPriority() {
        return jdbc.sql("""
                        select string_agg(priority || ': ' || n || ' begun, oldest ' || h || ' h; still waiting, oldest ' || w || ' h', ' | '
                          order by priority) from (
                          select r.priority, count(a.run_id) as n,
                            round(coalesce(max(extract(epoch from a.started_at - r.queued_at)) / 3600, 0), 1) as h,
                            round(coalesce(max(extract(epoch from now() - r.queued_at)) filter (where r.state = 'READY') / 3600, 0), 1) as w
                          from stook.run r left join stook.attempt a on a.run_id = r.id and a.n = 1 group by r.priority) p""").query(String.class).single();
    }

    private static List<Long> ids(List<RunId> runs) {
        return runs.stream().map(RunId::value).toList();
    }

    static String percentiles(double[] sorted) {
        return sorted.length == 0
                ? "none"
                : "median %.3f, p95 %.3f, most %.3f of %d"
                        .formatted(at(sorted, 0.5), at(sorted, 0.95), sorted[sorted.length - 1], sorted.length);
    }

    private static double at(double[] sorted, double share) {
        return sorted[Math.min(sorted.length - 1, (int) (share * sorted.length))];
    }
}
