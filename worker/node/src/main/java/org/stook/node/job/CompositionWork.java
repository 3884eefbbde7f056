package org.stook.node.job;

import java.io.IOException;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.batch.core.job.JobExecution;
import org.springframework.batch.core.job.JobExecutionException;
import org.springframework.batch.core.job.parameters.JobParameters;
import org.springframework.batch.core.job.parameters.JobParametersBuilder;
import org.springframework.batch.core.launch.JobOperator;
import org.springframework.batch.core.repository.JobRepository;
import org.stook.node.publish.Failpoint;
import org.stook.node.publish.Shares.Trouble;
import org.stook.orders.WorkOrder;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.StagedResult;
import org.stook.orders.attempt.Standing;
import org.stook.orders.attempt.Work;

/** Works on a claimed run: finishes what an earlier attempt staged, or launches the batch job and waits for its end. */
public final class CompositionWork implements Work {
    private static final Logger LOG = LoggerFactory.getLogger(CompositionWork.class);

    private final Workshop workshop;
    private final JobOperator operator;
    private final CompositionJob job;
    private final Endings endings;

    public CompositionWork(Workshop workshop, JobOperator operator, JobRepository repository) {
        this.workshop = workshop;
        this.operator = operator;
        this.job = new CompositionJob(repository);
        this.endings = new Endings(workshop.shares());
    }

    @Override
    public Outcome workOn(Attempt attempt) {
        WorkOrder order = attempt.order();
        Outcome outcome = outcome(attempt);
        LOG.info("run {}, attempt {}: {}", order.run(), order.attempt(), outcome);
        return outcome;
    }

    private Outcome outcome(Attempt attempt) {
        WorkOrder order = attempt.order();
        Failpoint.enter(order.run().value(), order.attempt());
        Optional<Trouble> trouble = workshop.shares().trouble(order);
        if (trouble.isPresent()) {
            return Endings.handedBack(trouble.get());
        }
        Optional<Outcome> tooLarge = Admission.refusal(attempt, workshop.means().memory());
        if (tooLarge.isPresent()) {
            return tooLarge.get();
        }
        try {
            Failpoint.hit("after-claim");
            Optional<Outcome> takenOver = takeOver(attempt);
            return takenOver.isPresent() ? takenOver.get() : compose(attempt);
        } catch (IOException | JobExecutionException | RuntimeException e) {
            return endings.of(order, e);
        }
    }

    private Optional<Outcome> takeOver(Attempt attempt) throws IOException {
        StagedResult staged = attempt.staged();
        if (staged == null) {
            return Optional.empty();
        }
        Optional<Outcome> outcome = workshop.publisher().takeOver(attempt, staged);
        if (outcome.isEmpty() && attempt.stagedResultLost() != Standing.VALID) {
            return Optional.of(new Outcome.LeaseLost());
        }
        return outcome;
    }

    private Outcome compose(Attempt attempt) throws JobExecutionException {
        try (Steps steps = new Steps(attempt, workshop)) {
            JobExecution execution = operator.start(job.of(steps), parameters(attempt.order()));
            LOG.debug("run {}: {}", attempt.order().run(), steps.costs());
            Outcome outcome = steps.outcome();
            if (outcome != null) {
                return outcome;
            }
            Throwable cause = execution.getAllFailureExceptions().stream()
                    .findFirst()
                    .orElseGet(() -> new IllegalStateException(
                            "the job ended as " + execution.getExitStatus() + " without a reason"));
            return endings.of(attempt.order(), cause);
        }
    }

    private static JobParameters parameters(WorkOrder order) {
        return new JobParametersBuilder()
                .addLong("run", order.run().value())
                .addLong("attempt", (long) order.attempt())
                .toJobParameters();
    }
}
