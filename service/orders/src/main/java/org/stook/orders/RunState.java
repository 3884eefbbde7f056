package org.stook.orders;

/** States of a run; the legal ways between them are rows of {@code stook.run_transition}. */
public enum RunState {
    READY,
    HELD,
    RUNNING,
    PUBLISHING,
    PUBLISHED,
    SUPERSEDED,
    FAILED,
    QUARANTINED,
    CANCELLED;

    /** Whether it may still lead to a publication without an operator's retry. */
    public boolean isOpen() {
        return ordinal() <= PUBLISHING.ordinal();
    }
}
