package org.stook.drills.check;

import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * What came of one drill.
 *
 * @param drill its name
 * @param seconds how long it took
 * @param faults how many were inflicted
 * @param runs in all
 * @param published of them
 * @param quarantined after three deaths
 * @param failed with a reason
 * @param attempts that were begun
 * @param refused attempts that were begun and ended without a publication
 * @param deaths counted against runs in the end
 * @param takeover longest time from the death of a worker to the next attempt at its run, seconds; 0 if none died
 * @param spared attempts that took over and went by saved placements instead of registering again
 * @param contents how many different depth maps there are of the same frames (the composites name their run); more than one is
 *     a fault
 * @param violations of what a history may be
 */
public record Result(
        String drill,
        long seconds,
        int faults,
        int runs,
        int published,
        int quarantined,
        int failed,
        int attempts,
        int refused,
        int deaths,
        double takeover,
        int spared,
        int contents,
        List<String> violations) {

    static final String TAKEOVER = """
            select coalesce(max(extract(epoch from n.started_at - f.at)), 0)::float8 from drill.fault f
              join stook.attempt a on a.run_id = f.run_id and a.n = f.attempt and a.outcome in ('DIED', 'LOST')
              join stook.attempt n on n.run_id = f.run_id and n.n = f.attempt + 1
            where f.kind = 'kill'""";

    /** Reads the figures from the tables. */
    public static Result of(String drill, long seconds, int faults, JdbcClient jdbc, List<String> violations) {
        return new Result(
                drill,
                seconds,
                faults,
                count(jdbc, "select count(*) from stook.run"),
                count(jdbc, "select count(*) from stook.publication"),
                count(jdbc, "select count(*) from stook.run where state = 'QUARANTINED'"),
                count(jdbc, "select count(*) from stook.run where state = 'FAILED'"),
                count(jdbc, "select count(*) from stook.attempt"),
                count(jdbc, "select count(*) from stook.attempt where outcome <> 'PUBLISHED'"),
                count(jdbc, "select coalesce(sum(deaths), 0)::int from stook.run"),
                jdbc.sql(TAKEOVER).query(Double.class).single(),
                count(jdbc, "select count(*) from stook.attempt where placements_of is not null"),
                count(jdbc, """
                        select count(distinct f ->> 'sha256') from stook.publication p join stook.stack s on s.id = p.stack_id,
                          jsonb_array_elements(p.files) f where s.subject like 'Mineral %' and f ->> 'kind' = 'depth-map'"""),
                violations);
    }

    private static int count(JdbcClient jdbc, String sql) {
        return jdbc.sql(sql).query(Integer.class).single();
    }

    /** Whether everything is as it has to be. */
    public boolean sound() {
        return violations.isEmpty() && contents <= 1;
    }
}
