package org.stook.app;

import java.time.Duration;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Something that one of the services does again and again.
 *
 * @param name unique, for the queue and the log
 * @param between pause after each step
 * @param step ends within a few seconds, or soon after what it is given turns false, as it does when the service stops; what it
 *     throws is logged, and the next step comes all the same
 */
record Recurring(String name, Duration between, Consumer<BooleanSupplier> step) {
    Recurring(String name, Duration between, Runnable step) {
        this(name, between, goOn -> step.run());
    }
}
