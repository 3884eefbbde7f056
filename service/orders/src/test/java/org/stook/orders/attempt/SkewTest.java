package org.stook.orders.attempt;

import static org.assertj.core.api.Assertions.assertThat;

import com.github.kagkarlsson.scheduler.Clock;
import com.github.kagkarlsson.scheduler.SystemClock;
import com.github.kagkarlsson.scheduler.testhelper.ManualScheduler;
import com.github.kagkarlsson.scheduler.testhelper.SettableClock;
import com.github.kagkarlsson.scheduler.testhelper.TestHelper;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stook.orders.DbClock;
import org.stook.orders.OrderBook;
import org.stook.orders.RunId;
import org.stook.orders.Studio;

/** Why the queue's clock is the database's: a node whose own clock is a minute fast takes the living for dead. */
class SkewTest {
    private static final Studio STUDIO = new Studio(SkewTest.class);

    @Test
    void aFastClockOfANodesOwnKillsALivingAttempt() {
        assertThat(stateAfterALookBy(() -> new SystemClock().now().plusSeconds(60)))
                .isEqualTo("READY1");
    }

    @Test
    void theDatabasesClockDoesNot() {
        assertThat(stateAfterALookBy(new DbClock(STUDIO.source))).isEqualTo("RUNNING0");
    }

    /** State and deaths of a run in work after another node with that clock has looked for dead executions. */
    private static String stateAfterALookBy(Clock clock) {
        RunId run = STUDIO.run();
        ManualScheduler other = scheduler("w2", clock, attempt -> new Outcome.LeaseLost());
        String[] seen = new String[1];
        scheduler("w1", new DbClock(STUDIO.source), attempt -> {
                    other.runDeadExecutionDetection();
                    seen[0] = STUDIO.value("select state || deaths from stook.run where id = " + run);
                    return new Outcome.LeaseLost();
                })
                .runAnyDueExecutions();
        STUDIO.jdbc.sql("delete from jobs.scheduled_tasks").update();
        return seen[0];
    }

    private static ManualScheduler scheduler(String name, Clock clock, Work work) {
        RunTask task = new RunTask(STUDIO.source, STUDIO.transactions, name, "1");
        var builder = TestHelper.createManualScheduler(STUDIO.source, List.of(task.with(work)));
        builder.clock(new SettableClock() {
            @Override
            public Instant now() {
                return clock.now();
            }
        });
        builder.tableName(OrderBook.RUNS_TABLE);
        builder.enablePriority().pollUsingLockAndFetch(0.5, 1.0).threads(1);
        builder.heartbeatInterval(Duration.ofSeconds(5)).missedHeartbeatsLimit(4);
        return builder.build();
    }
}
