package org.stook.node.job;

import java.time.Duration;
import java.util.Optional;
import org.stook.orders.WorkOrder;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;

/**
 * Whether a stack fits into this process. One that does not would end it by running out of memory, three times over, and
 * then be taken for one that kills workers.
 */
final class Admission {
    /**
     * Planes of one composite, bytes a pixel of a frame: what the heap of a 24 megapixel composition peaks at, with some to
     * spare. The number of frames does not matter.
     */
    private static final long BYTES_A_PIXEL = 64;

    private static final long WITHOUT_A_PICTURE = 128L << 20;
    private static final Duration FOR_ANOTHER = Duration.ofSeconds(15);

    private Admission() {}

    /**
     * Empty if the attempt may begin; else what becomes of it: left to a larger worker if there is one, else held with a
     * sentence that says what is missing.
     *
     * @param memory greatest heap of this process, bytes
     */
    static Optional<Outcome> refusal(Attempt attempt, long memory) {
        long need = need(attempt.order());
        if (need <= memory) {
            return Optional.empty();
        }
        long other = attempt.largestOtherWorker();
        String reason = "this stack needs a worker with %s of heap, the largest has %s"
                .formatted(gib(need), gib(Math.max(memory, other)));
        return Optional.of(
                need <= other
                        ? new Outcome.HandedBack("MEMORY", reason, FOR_ANOTHER)
                        : new Outcome.Held("MEMORY", reason + "; start such a worker, then release the run"));
    }

    /** Heap that a composition of these frames takes at most, bytes. */
    static long need(WorkOrder order) {
        long pixels = order.sweep().stream()
                .mapToLong(f -> (long) f.width() * f.height())
                .max()
                .orElse(0);
        return WITHOUT_A_PICTURE + pixels * BYTES_A_PIXEL;
    }

    private static String gib(long bytes) {
        return "%.1f GiB".formatted(bytes / (double) (1L << 30));
    }
}
