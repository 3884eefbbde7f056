package org.stook.orders.attempt;

import java.time.Instant;

/** What becomes of the run's task when an attempt has ended. */
sealed interface Next {
    /** The run waits again and may be taken from then on. */
    record Again(Instant at) implements Next {}

    /** The run is over, or waits for an operator. */
    record Over() implements Next {}

    /** Somebody else has the run; its task is theirs. */
    record NotOurs() implements Next {}
}
