package org.stook.node.job;

import java.time.Duration;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.Standing;

/** Reports where an attempt is, and ends it when it is told that it may not go on. */
final class Reporting {
    private final Attempt attempt;

    Reporting(Attempt attempt) {
        this.attempt = attempt;
    }

    /**
     * @param part of the stage that is done, 0 to 1
     * @throws Ended when the attempt is over
     */
    void at(Stage stage, double part) {
        Standing standing = attempt.progress(stage.step(), stage.ofRun(part));
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
