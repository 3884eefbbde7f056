package org.stook.node.job;

import org.springframework.batch.core.job.Job;
import org.springframework.batch.core.job.JobExecution;
import org.springframework.batch.core.job.builder.JobBuilder;
import org.springframework.batch.core.listener.JobExecutionListener;
import org.springframework.batch.core.repository.JobRepository;
import org.springframework.batch.core.step.Step;
import org.springframework.batch.core.step.StepExecution;
import org.springframework.batch.core.step.builder.StepBuilder;
import org.springframework.batch.infrastructure.repeat.RepeatStatus;
import org.springframework.batch.infrastructure.support.transaction.ResourcelessTransactionManager;
import org.stook.orders.attempt.Attempt;

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
                .start(step(Stage.SURVEY, steps::survey))
                .next(step(Stage.REGISTER, steps::register))
                .next(step(Stage.BLEND, steps::blend))
                .next(step(Stage.FINISH, steps::finish))
                .next(step(Stage.SCORE, steps::score))
                .next(step(Stage.PUBLISH, steps::publish))
                .build();
    }

    private interface Body {
        void run() throws Exception;
    }

    private Step step(Stage stage, Body body) {
        return new StepBuilder(stage.step(), repository)
                .tasklet((contribution, context) -> {
                    run(body, contribution.getStepExecution());
                    return RepeatStatus.FINISHED;
                })
                // A stage takes minutes and writes nothing to the database: no transaction, no connection held.
                .transactionManager(new ResourcelessTransactionManager())
                .build();
    }

    private static void run(Body body, StepExecution step) throws Exception {
        try {
            body.run();
        } catch (Ended e) {
            step.setTerminateOnly();
            throw e;
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
