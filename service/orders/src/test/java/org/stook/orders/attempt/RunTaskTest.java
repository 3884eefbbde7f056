package org.stook.orders.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.testhelper.ManualScheduler;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.jdbc.datasource.DriverManagerDataSource;
import org.springframework.transaction.support.TransactionTemplate;
import org.stook.orders.NamePattern;
import org.stook.orders.OrderBook;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;
import org.stook.orders.Studio;
import org.stook.orders.WorkOrder;

/** The whole way of a run through the queue, its crank turned by hand. */
class RunTaskTest {
    private static final Studio STUDIO = new Studio(RunTaskTest.class);
    private final List<RunId> worked = new ArrayList<>();
    private final SettableClock clock = new SettableClock();

    @AfterEach
    void empty() {
        STUDIO.jdbc.sql("delete from jobs.scheduled_tasks").update();
    }

    @Test
    void aPublishedRunLeavesTheQueue() {
        RunId run = STUDIO.run();
        turn(scheduler("w1", RunTaskTest::publish));
        assertThat(STUDIO.state(run)).isEqualTo("PUBLISHED");
        assertThat(STUDIO.hasTask(run)).isFalse();
    }

    @Test
    void aStepsOwnTransactionNeitherHoldsUpNorUndoesTheFence() {
        RunId run = STUDIO.run();
        turn(scheduler("w1", attempt -> {
            new TransactionTemplate(STUDIO.transactions).executeWithoutResult(step -> {
                publish(attempt);
                step.setRollbackOnly();
            });
            return new Outcome.Published();
        }));
        assertThat(STUDIO.state(run)).isEqualTo("PUBLISHED");
    }

    @Test
    void withoutTheDatabaseTheWorkGoesOn() {
        DataSource away = new DriverManagerDataSource("jdbc:postgresql://127.0.0.1:1/x");
        Fence fence = new Fence(new Ledger(away, new DataSourceTransactionManager(away), "w1"));
        WorkOrder order = new WorkOrder(
                new RunId(1),
                1,
                new WorkOrder.Stack(1, "north", "x", null, null),
                List.of(),
                new WorkOrder.Settings(Studio.HASH, "{}"),
                new WorkOrder.Output(1, "", NamePattern.USUAL),
                List.of());
        Attempt attempt = new Attempt(new Claim.Taken(order, null), fence, Attempt.UNDISTURBED, System.nanoTime());
        assertThat(attempt.progress("blend", 0.5)).isEqualTo(Standing.VALID);
    }

    @Test
    void anAttemptThatMaySoonBeTakenForDeadStops() {
        List<Standing> heard = new ArrayList<>();
        STUDIO.run();
        turn(scheduler("w1", attempt -> {
            clock.tick(Duration.ofHours(1));
            heard.add(attempt.progress("blend", 0.5));
            return new Outcome.LeaseLost();
        }));
        assertThat(heard).containsExactly(Standing.LEASE_LOST);
    }

    @Test
    void theHigherPriorityGoesFirst() {
        RunId backlog = STUDIO.run(Priorities.BACKLOG);
        RunId normal = STUDIO.run();
        RunId mounted = STUDIO.run(Priorities.ON_TABLE);
        ManualScheduler scheduler = scheduler("w1", RunTaskTest::publish);
        for (int i = 0; i < 3; i++) {
            turn(scheduler);
        }
        assertThat(worked).containsExactly(mounted, normal, backlog);
    }

    @Test
    void aBrokenWorkerIsATransientFailureAndTheTaskWaits() {
        RunId run = STUDIO.run();
        turn(scheduler("w1", attempt -> {
            throw new IllegalStateException("a bug");
        }));
        assertThat(STUDIO.value("select state || failures || reason_code from stook.run where id = " + run))
                .isEqualTo("READY1UNEXPECTED");
        assertThat(STUDIO.value("select picked || ' ' || (execution_time > now() + interval '5 s')"
                        + " from jobs.scheduled_tasks where task_instance = '" + run + "'"))
                .isEqualTo("false true");
    }

    @Test
    void aHeldRunThatWasAlreadyPickedIsNotWorked() {
        RunId run = STUDIO.run();
        STUDIO.jdbc.sql("update stook.run set state = 'HELD' where id = " + run).update();
        turn(scheduler("w1", RunTaskTest::publish));
        assertThat(worked).isEmpty();
        assertThat(STUDIO.hasTask(run)).isFalse();
    }

    @Test
    void aSilentWorkersRunIsTakenOverAndItsLateResultRefused() {
        RunId run = STUDIO.run();
        List<Standing> late = new ArrayList<>();
        ManualScheduler other = scheduler("w2", RunTaskTest::publish);
        turn(scheduler("w1", attempt -> {
            // Frozen here while the other one notices, takes over and publishes.
            clock.tick(Duration.ofHours(1));
            other.runDeadExecutionDetection();
            turn(other);
            late.add(attempt.publishing(staged(attempt)));
            return new Outcome.LeaseLost();
        }));
        assertThat(late).containsExactly(Standing.LEASE_LOST);
        assertThat(STUDIO.value("select state || deaths || attempt from stook.run where id = " + run))
                .isEqualTo("PUBLISHED02");
        assertThat(STUDIO.value("select worker_id from stook.run where id = " + run))
                .isEqualTo("w2");
    }

    private ManualScheduler scheduler(String name, Work work) {
        RunTask task = new RunTask(STUDIO.source, STUDIO.transactions, name, "1");
        var builder = TestHelper.createManualScheduler(STUDIO.source, List.of(task.with(attempt -> {
            worked.add(attempt.order().run());
            return work.workOn(attempt);
        })));
        clock.set(Instant.now().plusSeconds(1));
        builder.clock(clock).tableName(OrderBook.RUNS_TABLE);
        builder.enablePriority().pollUsingLockAndFetch(0.5, 1.0).threads(1);
        return builder.build();
    }

    private static void turn(ManualScheduler scheduler) {
        scheduler.runAnyDueExecutions();
    }

    private static Outcome publish(Attempt attempt) {
        attempt.workedOnBy(7);
        assertThat(attempt.progress("blend", 0.5)).isEqualTo(Standing.VALID);
        assertThat(attempt.publishing(staged(attempt))).isEqualTo(Standing.VALID);
        assertThat(attempt.published(new PublishedResult(9, "[]", null, null))).isEqualTo(Standing.VALID);
        return new Outcome.Published();
    }

    private static StagedResult staged(Attempt attempt) {
        return new StagedResult(
                attempt.order().stagedName(), attempt.order().finalName(Studio.HASH, ".tif"), Studio.HASH);
    }
}
