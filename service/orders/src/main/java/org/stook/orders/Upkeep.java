package org.stook.orders;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/** What has to be done for the queue every minute, by one of the services. */
public final class Upkeep {
    private static final int AGEING_MINUTES_A_STEP = 5;

    private static final int TASKS_A_STATEMENT = 500;

    private static final int SILENT_MINUTES = 10;

    private static final int DAYS_OF_STEPS = 30;
    /** A round ends within a second or two; ten thousand runs a day are seven a minute. */
    private static final int EXECUTIONS_A_ROUND = 500;

    private static final List<String> STEP_TABLES = List.of(
            "delete from batch.batch_step_execution_context where step_execution_id in"
                    + " (select step_execution_id from batch.batch_step_execution where job_execution_id in (:old))",
            "delete from batch.batch_step_execution where job_execution_id in (:old)",
            "delete from batch.batch_job_execution_context where job_execution_id in (:old)",
            "delete from batch.batch_job_execution_params where job_execution_id in (:old)");

    private final JdbcClient jdbc;
    private final Queue queue;
    private final TransactionTemplate transaction;

    public Upkeep(DataSource source, PlatformTransactionManager transactions) {
        this.jdbc = JdbcClient.create(source);
        this.queue = new Queue(source);
        this.transaction = new TransactionTemplate(transactions);
    }

    /**
     * Lifts what waits by one for each five minutes, up to {@link Priorities#AGED}. A few hundred at a time: a claim passes over
     * what is locked, and with the whole queue locked at once every slot would stand idle.
     *
     * @return how many were lifted
     */
    public int age() {
        record Aged(String instance, int priority) {}
        Map<Integer, List<String>> due = jdbc
                .sql("""
                        select t.task_instance, aged.priority from jobs.scheduled_tasks t join (
                          select r.id::text as instance, least(:cap, r.priority
                            + floor(extract(epoch from now() - r.queued_at) / 60 / :minutes))::int as priority
                          from stook.run r where r.state = 'READY' and r.priority < :cap) aged on aged.instance = t.task_instance
                        where t.task_name = 'run' and not t.picked and t.priority is distinct from aged.priority
                        order by t.execution_time""")
                .param("cap", Priorities.AGED)
                .param("minutes", AGEING_MINUTES_A_STEP)
                .query((row, n) -> new Aged(row.getString(1), row.getInt(2)))
                .list()
                .stream()
                .collect(Collectors.groupingBy(
                        Aged::priority, TreeMap::new, Collectors.mapping(Aged::instance, Collectors.toList())));
        int lifted = 0;
        for (Map.Entry<Integer, List<String>> group : due.entrySet()) {
            for (int from = 0; from < group.getValue().size(); from += TASKS_A_STATEMENT) {
                lifted += lift(
                        group.getValue()
                                .subList(
                                        from,
                                        Math.min(
                                                from + TASKS_A_STATEMENT,
                                                group.getValue().size())),
                        group.getKey());
            }
        }
        return lifted;
    }

    private int lift(List<String> instances, int priority) {
        return jdbc.sql("update jobs.scheduled_tasks set priority = :priority"
                        + " where task_name = 'run' and task_instance in (:instances) and not picked")
                .param("priority", priority)
                .param("instances", instances)
                .update();
    }

    /**
     * Posts every open run whose task is missing, which a crash between a worker's last word and an operator's retry can
     * leave behind.
     *
     * @return how many there were
     */
    public int repost() {
        List<RunId> lost =
                jdbc.sql("""
                        select r.id from stook.run r
                        where r.state in ('READY', 'RUNNING', 'PUBLISHING') and not exists (
                          select 1 from jobs.scheduled_tasks t where t.task_name = 'run' and t.task_instance = r.id::text)
                        order by r.id""").query((row, n) -> new RunId(row.getLong(1))).list();
        lost.forEach(run -> transaction.executeWithoutResult(t -> queue.post(run)));
        return lost.size();
    }

    /**
     * Takes workers that have been silent for ten minutes off the list. One that wakes up puts itself back.
     *
     * @return how many there were
     */
    public int retire() {
        return jdbc.sql("""
                        update stook.worker set state = 'GONE', pause_reason = 'silent'
                        where state <> 'GONE' and last_seen < now() - make_interval(mins => :minutes)""").param("minutes", SILENT_MINUTES).update();
    }

    /**
     * Deletes the placements of runs that are over: nobody takes them over any more.
     *
     * @return of how many runs
     */
    public int forgetPlacements() {
        return jdbc.sql("""
                        delete from stook.placements p using stook.run r
                        where r.id = p.run_id and r.state in ('PUBLISHED', 'SUPERSEDED', 'CANCELLED')""").update();
    }

    /**
     * Deletes the step history of executions older than thirty days, the oldest first. What became of a run stays in its
     * attempts and in the audit entries.
     *
     * @return how many executions it was
     */
    public int prune() {
        return Objects.requireNonNull(transaction.execute(t -> {
            List<Long> old = jdbc.sql("""
                            select job_execution_id from (select job_execution_id, create_time from batch.batch_job_execution
                              order by job_execution_id limit :most) oldest
                            where create_time < localtimestamp - make_interval(days => :days)""")
                    .param("most", EXECUTIONS_A_ROUND)
                    .param("days", DAYS_OF_STEPS)
                    .query(Long.class)
                    .list();
            if (!old.isEmpty()) {
                STEP_TABLES.forEach(sql -> jdbc.sql(sql).param("old", old).update());
                deleteExecutions(old);
            }
            return old.size();
        }));
    }

    private void deleteExecutions(List<Long> old) {
        List<Long> instances = jdbc.sql(
                        "delete from batch.batch_job_execution where job_execution_id in (:old) returning job_instance_id")
                .param("old", old)
                .query(Long.class)
                .list();
        jdbc.sql("delete from batch.batch_job_instance where job_instance_id in (:instances)")
                .param("instances", instances)
                .update();
    }
}
