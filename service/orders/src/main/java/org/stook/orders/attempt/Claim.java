package org.stook.orders.attempt;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.stook.orders.RunState;
import org.stook.orders.WorkOrder;

/** What came of claiming a run. */
sealed interface Claim {
    /**
     * The run is this worker's.
     *
     * @param staged what an earlier attempt staged before it was lost: if the final file has that hash it is published, if
     *     the staged one has it only the rename is missing, else {@link Attempt#stagedResultLost()}
     */
    record Taken(WorkOrder order, @Nullable StagedResult staged) implements Claim {}

    /** Not yet: a backoff runs, or a share it needs is not usable. */
    record Later(Instant at, String reason) implements Claim {}

    /** Held, cancelled or over by now. */
    record Nothing(RunState state) implements Claim {}
}
