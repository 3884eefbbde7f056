package org.stook.orders.attempt;

import com.github.kagkarlsson.scheduler.task.CompletionHandler;
import com.github.kagkarlsson.scheduler.task.ExecutionComplete;
import com.github.kagkarlsson.scheduler.task.ExecutionContext;
import com.github.kagkarlsson.scheduler.task.ExecutionOperations;
import com.github.kagkarlsson.scheduler.task.Task;
import com.github.kagkarlsson.scheduler.task.TaskInstance;
import com.github.kagkarlsson.scheduler.task.helper.Tasks;
import java.time.Duration;
import javax.sql.DataSource;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.transaction.PlatformTransactionManager;
import org.stook.orders.OrderBook;
import org.stook.orders.RunId;

/** The queue's task of a run: claims, lets the worker work, writes down how it ended, and settles the task accordingly. */
public final class RunTask {
    private static final Logger LOG = LoggerFactory.getLogger(RunTask.class);
    /** After an end that could not be written down; the next claim finds the attempt open and closes it. */
    private static final Duration UNSETTLED = Duration.ofSeconds(15);

    private final Claims claims;
    private final Fence fence;
    private final Endings endings;
    private final Deaths deaths;
    private final String engineVersion;

    /**
     * @param workerId as announced to {@link org.stook.orders.Workers}
     * @param engineVersion written down with each attempt and publication
     */
    public RunTask(DataSource source, PlatformTransactionManager transactions, String workerId, String engineVersion) {
        Ledger ledger = new Ledger(source, transactions, workerId);
        this.claims = new Claims(ledger);
        this.fence = new Fence(ledger);
        this.endings = new Endings(ledger);
        this.deaths = new Deaths(ledger);
        this.engineVersion = engineVersion;
    }

    /** The task for {@link OrderBook#worker}. */
    public Task<Void> with(Work work) {
        return Tasks.custom(OrderBook.RUN)
                .onFailure(
                        (done, task) -> task.reschedule(done, done.getTimeDone().plus(UNSETTLED)))
                .onDeadExecution(this::dead)
                .execute((instance, context) -> execute(instance, context, work));
    }

    /**
     * Claims and works one run without the queue, whose task stays as it is: for tests and drills.
     */
    public void workOnce(RunId run, Work work) {
        attempt(run, work, Attempt.UNDISTURBED);
    }

    private CompletionHandler<Void> execute(TaskInstance<Void> instance, ExecutionContext context, Work work) {
        RunId run = RunId.of(instance.getId());
        return settle(attempt(run, work, Attempt.pulseOf(context)));
    }

    private Next attempt(RunId run, Work work, Attempt.Pulse pulse) {
        long since = System.nanoTime();
        Claim claim = claims.claim(run, engineVersion);
        if (claim instanceof Claim.Later later) {
            return new Next.Again(later.at());
        }
        if (!(claim instanceof Claim.Taken taken)) {
            return new Next.Over();
        }
        Outcome outcome = outcome(work, new Attempt(taken, fence, pulse, since));
        return endings.end(run, taken.order().attempt(), outcome);
    }

    private static Outcome outcome(Work work, Attempt attempt) {
        try {
            return work.workOn(attempt);
        } catch (RuntimeException e) {
            LOG.error(
                    "run {}, attempt {} broke",
                    attempt.order().run(),
                    attempt.order().attempt(),
                    e);
            return new Outcome.Transient("UNEXPECTED", e.toString());
        }
    }

    private void dead(ExecutionComplete noticed, ExecutionOperations<Void> task) {
        RunId run = RunId.of(noticed.getExecution().getId());
        settle(deaths.noticed(run, noticed.getExecution().version)).complete(noticed, task);
    }

    private static CompletionHandler<Void> settle(Next next) {
        if (next instanceof Next.Again again) {
            return (done, task) -> task.reschedule(done, again.at());
        } else if (next instanceof Next.Over) {
            return (done, task) -> task.remove();
        }
        return (done, task) -> {};
    }
}
