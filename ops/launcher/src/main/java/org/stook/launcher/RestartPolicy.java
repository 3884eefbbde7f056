package org.stook.launcher;

import java.time.Duration;

/**
 * How long to wait before a dead child is started again: each death in a row doubles the pause, so that a child that cannot
 * live does not eat the machine; a child that lived for a while begins anew.
 *
 * @param first pause after the first death
 * @param longest pause at most
 * @param settled a child that lived this long counts as sound
 */
record RestartPolicy(Duration first, Duration longest, Duration settled) {
    static final RestartPolicy USUAL =
            new RestartPolicy(Duration.ofSeconds(1), Duration.ofSeconds(30), Duration.ofSeconds(60));
    private static final int MOST_DOUBLINGS = 20;

    /** @param deaths deaths in a row including this one, at least 1 */
    Duration pause(int deaths) {
        Duration pause = first.multipliedBy(1L << Math.min(deaths - 1, MOST_DOUBLINGS));
        return pause.compareTo(longest) < 0 ? pause : longest;
    }

    /** How many deaths in a row there are now, given those before and how long the child lived. */
    int deathsInARow(int before, Duration lived) {
        return lived.compareTo(settled) < 0 ? before + 1 : 1;
    }
}
