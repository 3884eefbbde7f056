package org.stook.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.springframework.transaction.support.TransactionTemplate;

class RunsTest {
    private static final Studio STUDIO = new Studio(RunsTest.class);
    private final Runs runs = STUDIO.runs;

    @Test
    void aRunAndItsTaskAreThereTogether() {
        RunId run = STUDIO.run(70);
        assertThat(STUDIO.state(run)).isEqualTo("READY");
        assertThat(STUDIO.value("select priority || ' ' || picked from jobs.scheduled_tasks where task_instance = '"
                        + run + "'"))
                .isEqualTo("70 false");
        assertThat(STUDIO.trail(run)).containsExactly("run.CREATED");
    }

    @Test
    void aRunThatIsRolledBackLeavesNoTask() {
        long stack = STUDIO.stack();
        RunId[] run = new RunId[1];
        new TransactionTemplate(STUDIO.transactions).executeWithoutResult(t -> {
            run[0] = runs.create(new NewRun(stack, Studio.HASH, 50, "ada"));
            assertThat(STUDIO.hasTask(run[0])).isTrue();
            t.setRollbackOnly();
        });
        assertThat(STUDIO.hasTask(run[0])).isFalse();
        assertThat(STUDIO.value("select count(*) from stook.run where id = " + run[0]))
                .isEqualTo("0");
    }

    @Test
    void orderingAgainWhatIsOpenGivesTheOpenRun() {
        NewRun wanted = new NewRun(STUDIO.stack(), Studio.HASH, 50, "ada");
        assertThat(runs.create(wanted)).isEqualTo(runs.create(wanted));
    }

    @Test
    void anUnsealedStackIsRefused() {
        long open = STUDIO.jdbc
                .sql("insert into stook.stack (station_id, subject) values (1, 'x') returning id")
                .query(Long.class)
                .single();
        assertThatThrownBy(() -> runs.create(new NewRun(open, Studio.HASH, 50, "ada")))
                .hasMessage("stack " + open + " is not sealed");
    }

    @Test
    void aHeldRunLeavesTheQueueUntilItIsReleased() {
        RunId run = STUDIO.run();
        assertThat(runs.hold(run, "ada", "wrong label")).isEqualTo(new Change(true, RunState.HELD));
        assertThat(STUDIO.hasTask(run)).isFalse();
        assertThat(runs.hold(run, "ada", "again")).isEqualTo(new Change(false, RunState.HELD));
        assertThat(runs.release(run, "bo")).isEqualTo(new Change(true, RunState.READY));
        assertThat(STUDIO.hasTask(run)).isTrue();
        assertThat(STUDIO.value("select string_agg(actor, ' ' order by id) from stook.audit_entry where subject = 'run/"
                        + run + "'"))
                .isEqualTo("ada ada bo");
    }

    @Test
    void aWaitingRunIsCancelledAtOnce() {
        RunId run = STUDIO.run();
        assertThat(runs.cancel(run, "ada", "reshot")).isEqualTo(new Change(true, RunState.CANCELLED));
        assertThat(STUDIO.hasTask(run)).isFalse();
        assertThat(runs.cancel(run, "ada", "again")).isEqualTo(new Change(false, RunState.CANCELLED));
        assertThat(runs.retry(run, "ada").done()).isFalse();
    }

    @Test
    void anUnknownRunIsNamed() {
        assertThatThrownBy(() -> runs.release(new RunId(999_999), "ada")).hasMessage("there is no run 999999");
    }

    @Test
    void aNewPriorityReachesTheQueue() {
        RunId run = STUDIO.run();
        assertThat(runs.prioritise(run, Priorities.ON_TABLE, "ada").done()).isTrue();
        assertThat(STUDIO.value("select priority from jobs.scheduled_tasks where task_instance = '" + run + "'"))
                .isEqualTo("100");
        assertThat(STUDIO.trail(run)).containsExactly("run.CREATED", "run.PRIORITY");
    }
}
