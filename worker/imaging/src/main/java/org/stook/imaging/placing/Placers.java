package org.stook.imaging.placing;

import java.util.concurrent.ConcurrentLinkedDeque;
import java.util.function.Consumer;

/** Placers at rest, each lent to one thread at a time. Safe for several threads. */
public final class Placers {
    private final ConcurrentLinkedDeque<Placer> resting = new ConcurrentLinkedDeque<>();

    /** Does something with a placer that nobody else uses meanwhile. */
    public void with(Consumer<Placer> use) {
        Placer known = resting.poll();
        Placer placer = known == null ? new Placer() : known;
        use.accept(placer);
        resting.push(placer);
    }
}
