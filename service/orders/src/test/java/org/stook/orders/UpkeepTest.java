package org.stook.orders;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class UpkeepTest {
    private static final Studio STUDIO = new Studio(UpkeepTest.class);
    private final Upkeep upkeep = new Upkeep(STUDIO.source, STUDIO.transactions);

    @Test
    void waitingLiftsARunButNeverBeforeAMountedSubject() {
        RunId fresh = STUDIO.run(Priorities.BACKLOG);
        RunId old = STUDIO.run(Priorities.BACKLOG);
        RunId ancient = STUDIO.run(Priorities.BACKLOG);
        STUDIO.jdbc
                .sql("update stook.run set queued_at = now() - interval '52 minutes' where id = " + old)
                .update();
        STUDIO.jdbc
                .sql("update stook.run set queued_at = now() - interval '9 days' where id = " + ancient)
                .update();
        assertThat(upkeep.age()).isEqualTo(2);
        assertThat(upkeep.age()).isZero();
        assertThat(STUDIO.value("select string_agg(priority::text, ' ' order by task_instance::int) from"
                        + " jobs.scheduled_tasks where task_instance in ('" + fresh + "', '" + old + "', '" + ancient
                        + "')"))
                .isEqualTo("20 30 90");
    }

    @Test
    void anOpenRunWithoutATaskIsPostedAgain() {
        RunId run = STUDIO.run();
        STUDIO.jdbc
                .sql("delete from jobs.scheduled_tasks where task_instance = '" + run + "'")
                .update();
        assertThat(upkeep.repost()).isEqualTo(1);
        assertThat(STUDIO.hasTask(run)).isTrue();
        assertThat(upkeep.repost()).isZero();
    }

    @Test
    void aWorkerSilentForLongIsTakenOffTheList() {
        Workers workers = new Workers(STUDIO.source);
        STUDIO.jdbc
                .sql("update stook.worker set last_seen = now() - interval '11 minutes' where id = 'w2'")
                .update();
        assertThat(upkeep.retire()).isEqualTo(1);
        assertThat(workers.present()).extracting(Workers.Worker::id).containsExactly("w1");
        workers.seen("w2", Workers.State.ACTIVE, null, 5);
        assertThat(workers.present()).hasSize(2);
    }

    @Test
    void stepHistoryIsKeptForThirtyDays() {
        execution(1, "now() - interval '31 days'");
        execution(2, "now() - interval '29 days'");
        assertThat(upkeep.prune()).isEqualTo(1);
        assertThat(upkeep.prune()).isZero();
        for (String table : new String[] {"job_instance", "job_execution", "step_execution"}) {
            assertThat(STUDIO.value("select string_agg(" + table + "_id::text, ' ') from batch.batch_" + table))
                    .isEqualTo("2");
        }
        assertThat(STUDIO.value("select count(*) from batch.batch_job_execution_params"))
                .isEqualTo("1");
    }

    private static void execution(int id, String created) {
        for (String sql : new String[] {
            "insert into batch.batch_job_instance values (%d, 0, 'composition', '%1$d')",
            "insert into batch.batch_job_execution (job_execution_id, job_instance_id, create_time) values (%d, %1$d, "
                    + created + ")",
            "insert into batch.batch_job_execution_params values (%d, 'run', 'long', '1', 'Y')",
            "insert into batch.batch_job_execution_context values (%d, '', null)",
            "insert into batch.batch_step_execution (step_execution_id, version, step_name, job_execution_id, create_time)"
                    + " values (%d, 0, 'survey', %1$d, now())",
            "insert into batch.batch_step_execution_context values (%d, '', null)"
        }) {
            STUDIO.jdbc.sql(sql.formatted(id)).update();
        }
    }
}
