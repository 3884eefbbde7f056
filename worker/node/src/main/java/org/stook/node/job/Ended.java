package org.stook.node.job;

import org.stook.orders.attempt.Outcome;

/** Ends an attempt from within its computation: it was cancelled, given back, taken over, or its input is not what it was. */
final class Ended extends RuntimeException {
    private static final long serialVersionUID = 1;

    private final transient Outcome outcome;

    Ended(Outcome outcome) {
        super(outcome.toString(), null, false, false);
        this.outcome = outcome;
    }

    Outcome outcome() {
        return outcome;
    }
}
