package org.stook.node.job;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicReference;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.Standing;

/**
 * Reports where an attempt is, and ends it when it is told that it may not go on. A stage that hurries through its frames
 * is not reported frame by frame: several times a second will do for people and for whoever calls the attempt off.
 */
final class Reporting {
    private static final long BETWEEN_NANOS = Duration.ofMillis(200).toNanos();

    private record Last(Stage stage, long nanos) {}

    private final Attempt attempt;
    private final Costs costs;
    private final AtomicReference<Last> last = new AtomicReference<>();

    Reporting(Attempt attempt, Costs costs) {
        this.attempt = attempt;
        this.costs = costs;
    }

    /**
     * @param part of the stage that is done, 0 to 1
     * @throws Ended when the attempt is over
     */
    void at(Stage stage, double part) {
        long now = System.nanoTime();
        Last before = last.get();
        boolean due = before == null || before.stage() != stage || now - before.nanos() >= BETWEEN_NANOS;
        // Of several threads one reports.
        if (!due || !last.compareAndSet(before, new Last(stage, now))) return;
        costs.started(attempt.age());
        Standing standing = attempt.progress(stage.step(), stage.ofRun(part));
        costs.reporting(System.nanoTime() - now);
        obey(stage, standing);
    }

    private static void obey(Stage stage, Standing standing) {
        // Once blended it takes seconds: a drain waits for that rather than throwing all work away.
        boolean nearlyDone = stage.compareTo(Stage.BLEND) > 0;
        switch (standing) {
            case CANCEL -> throw new Ended(new Outcome.Cancelled());
            case LEASE_LOST -> throw new Ended(new Outcome.LeaseLost());
            case DRAIN -> {
                if (!nearlyDone) {
                    throw new Ended(new Outcome.HandedBack("DRAIN", "the worker was told to end", Duration.ZERO));
                }
            }
            case VALID -> {}
        }
    }
}
