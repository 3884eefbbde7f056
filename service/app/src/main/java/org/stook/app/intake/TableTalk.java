package org.stook.app.intake;

import java.util.function.LongSupplier;
import org.springframework.stereotype.Component;

/** Tells the table of a sweep while it is shot: after every frame, but never for more than half of the time. */
@Component
class TableTalk {
    private final Sweeps sweeps;
    private final EarlyLooks early;
    private final LongSupplier ticker;
    private long free = Long.MIN_VALUE;

    TableTalk(Sweeps sweeps, EarlyLooks early, LongSupplier ticker) {
        this.sweeps = sweeps;
        this.early = early;
        this.ticker = ticker;
    }

    /** Judges a collecting stack as far as its frames were looked at; frames that wait for their look go first. */
    void judge(long stack) {
        long begun = ticker.getAsLong();
        if (begun < free || early.isBehind()) {
            return;
        }
        sweeps.soFar(stack);
        long ended = ticker.getAsLong();
        free = ended + (ended - begun);
    }
}
