package org.stook.orders.attempt;

/** Whether an attempt may go on. */
public enum Standing {
    /** It may, and what was asked for is done. */
    VALID,
    /** An operator wants it to stop; answer with {@link Outcome.Cancelled}. */
    CANCEL,
    /** This process is told to end; finish if that is quick, else answer with {@link Outcome.HandedBack}. */
    DRAIN,
    /** A later attempt exists, or this one was silent so long that there may soon be one: stop writing. */
    LEASE_LOST
}
