package org.stook.orders.attempt;

/** What a worker does with a claimed run. */
@FunctionalInterface
public interface Work {
    /**
     * Works on the attempt until it ends, one way or the other. An exception is a bug or a broken machine; it counts as a
     * transient failure.
     */
    Outcome workOn(Attempt attempt);
}
