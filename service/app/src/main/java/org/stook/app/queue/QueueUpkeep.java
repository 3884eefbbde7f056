package org.stook.app.queue;

import org.springframework.stereotype.Component;
import org.stook.orders.Upkeep;

/**
 * What the queue needs every minute: old work lifted, lost tasks posted again, silent workers taken off the list, old step
 * history and placements nobody needs any more deleted.
 */
@Component
public class QueueUpkeep {
    private final Upkeep upkeep;

    public QueueUpkeep(Upkeep upkeep) {
        this.upkeep = upkeep;
    }

    /** One round. */
    public void step() {
        upkeep.age();
        upkeep.repost();
        upkeep.retire();
        upkeep.prune();
        upkeep.forgetPlacements();
    }
}
