package org.stook.comparison.command;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.stook.comparison.run.Outcome;

/** A run that may fail without taking the other figures of the table with it. */
interface Attempt {
    Outcome run() throws IOException, InterruptedException;

    /** The outcome, or null after the failure has been told. */
    static @Nullable Outcome of(Attempt attempt) throws InterruptedException {
        try {
            return attempt.run();
        } catch (IOException e) {
            System.err.println("FAILED, its column stays empty: " + e.getMessage());
            return null;
        }
    }
}
