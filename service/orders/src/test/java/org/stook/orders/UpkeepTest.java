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
}
