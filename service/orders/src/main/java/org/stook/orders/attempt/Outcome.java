package org.stook.orders.attempt;

import java.time.Duration;

/** How an attempt ended, as its worker sees it. */
public sealed interface Outcome {
    /** {@link Attempt#published} was answered with {@link Standing#VALID}. */
    record Published() implements Outcome {}

    /** No further attempt can do better: an unreadable frame, no registration, a frame changed since intake. */
    record Failed(String code, String reason) implements Outcome {}

    /** May go better later: an I/O error. The third in a run is final. */
    record Transient(String code, String reason) implements Outcome {}

    /**
     * Given back through no fault of the run (drain, share gone, disk full); counts for nothing.
     *
     * @param delay before anyone takes it again
     */
    record HandedBack(String code, String reason, Duration delay) implements Outcome {}

    /** Not for a worker like this one, such as one with too little memory: waits for an operator. Counts for nothing. */
    record Held(String code, String reason) implements Outcome {}

    /** Stopped because an operator asked for it. */
    record Cancelled() implements Outcome {}

    /** Another attempt has taken over; nothing may be written any more. */
    record LeaseLost() implements Outcome {}
}
