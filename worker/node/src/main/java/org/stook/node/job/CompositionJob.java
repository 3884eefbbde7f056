package org.stook.node.job;

import org.springframework.batch.core.job.Job;
import org.springframework.batch.core.job.JobExecution;
import org.springframework.batch.core.job.JobInterruptedException;
import org.springframework.batch.core.job.builder.JobBuilder;
import org.springframework.batch.core.listener.JobExecutionListener;
import org.springframework.batch.core.repository.JobRepository;
import org.springframework.batch.core.step.Step;
import org.springframework.batch.core.step.builder.StepBuilder;
import org.springframework.batch.infrastructure.repeat.RepeatStatus;
import org.springframework.batch.infrastructure.support.transaction.ResourcelessTransactionManager;
import org.stook.node.publish.Failpoint;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;

/**
 * The batch job of an attempt. It is never restarted: what an attempt leaves behind when it dies is either nothing or a
 * staged result, and the next attempt is a new instance. The job repository is where to look up which step took how long
 * and where an attempt ended.
 */
final class CompositionJob {
    static final String NAME = "composition";

    private final JobRepository repository;

    CompositionJob(JobRepository repository) {
        this.repository = repository;
    }

    Job of(Steps steps) {
        return new JobBuilder(NAME, repository)
                .preventRestart()
                .listener(noting(steps.attempt()))
                .start(step(steps, Stage.SURVEY, steps::survey))
                .next(step(steps, Stage.REGISTER, steps::register))
                .next(step(steps, Stage.BLEND, steps::blend))
                .next(step(steps, Stage.FINISH, steps::finish))
                .next(step(steps, Stage.SCORE, steps::score))
                .next(step(steps, Stage.PUBLISH, steps::publish))
                .build();
    }

    private interface Body {
        void run() throws Exception;
    }

    private Step step(Steps steps, Stage stage, Body body) {
        return new StepBuilder(stage.step(), repository)
                .tasklet((contribution, context) -> {
                    run(steps, stage, body);
                    return RepeatStatus.FINISHED;
                })
                // A stage takes minutes and writes nothing to the database: no transaction, no connection held.
                .transactionManager(new ResourcelessTransactionManager())
                .build();
    }

    /** What was called off stands as stopped in the repository, not as failed. */
    private static void run(Steps steps, Stage stage, Body body) throws Exception {
        try {
            Failpoint.hit("before-" + stage.step());
            body.run();
            Failpoint.hit("after-" + stage.step());
        } catch (Ended e) {
            if (e.outcome() instanceof Outcome.Failed) {
                throw e;
            }
            // An interruption's cause is lost on the way out of the job.
            steps.ended(e.outcome());
            throw new JobInterruptedException(e.outcome().toString());
        }
    }

    private static JobExecutionListener noting(Attempt attempt) {
        return new JobExecutionListener() {
            @Override
            public void beforeJob(JobExecution execution) {
                attempt.workedOnBy(execution.getId());
            }
        };
    }
}
