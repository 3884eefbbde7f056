package org.stook.orders;

import java.util.List;
import javax.sql.DataSource;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.transaction.PlatformTransactionManager;
import org.springframework.transaction.support.TransactionTemplate;

/** What has to be done for the queue every minute, by one of the services. */
public final class Upkeep {
    private static final int AGEING_MINUTES_A_STEP = 5;

    private static final int SILENT_MINUTES = 10;

    private final JdbcClient jdbc;
    private final Queue queue;
    private final TransactionTemplate transaction;

    public Upkeep(DataSource source, PlatformTransactionManager transactions) {
        this.jdbc = JdbcClient.create(source);
        this.queue = new Queue(source);
        this.transaction = new TransactionTemplate(transactions);
    }

    /** Lifts what waits by one for each five minutes, up to {@link Priorities#AGED}. */
    public int age() {
        return jdbc.sql("""
                        update jobs.scheduled_tasks t set priority = aged.priority
                        from (select r.id::text as instance, least(:cap, r.priority
                                + floor(extract(epoch from now() - r.queued_at) / 60 / :minutes))::smallint as priority
                              from stook.run r where r.state = 'READY' and r.priority < :cap) aged
                        where t.task_name = 'run' and t.task_instance = aged.instance and not t.picked
                          and t.priority is distinct from aged.priority""")
                .param("cap", Priorities.AGED)
                .param("minutes", AGEING_MINUTES_A_STEP)
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
}
