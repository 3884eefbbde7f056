package org.stook.node.job;

import java.io.IOException;
import java.time.Duration;
import java.util.concurrent.atomic.LongAdder;
import org.jspecify.annotations.Nullable;
import org.stook.imaging.composite.CannotCompose;

/** Where the time of an attempt goes: what is neither imaging nor comparing hashes is what queue, job and publishing cost. */
final class Costs {
    private final LongAdder imaging = new LongAdder();
    private final LongAdder comparing = new LongAdder();
    private final LongAdder reporting = new LongAdder();
    private volatile @Nullable Duration start;

    interface Work {
        void run() throws IOException, CannotCompose;
    }

    /** Reports that are made meanwhile are not imaging. */
    void imaging(Work work) throws IOException, CannotCompose {
        long reported = reporting.sum();
        timed(imaging, work);
        imaging.add(reported - reporting.sum());
    }

    void comparing(Work work) throws IOException, CannotCompose {
        timed(comparing, work);
    }

    void reporting(long nanos) {
        reporting.add(nanos);
    }

    /** @param age of the attempt when its first frame was about to be read */
    void started(Duration age) {
        if (start == null) start = age;
    }

    private static void timed(LongAdder sum, Work work) throws IOException, CannotCompose {
        long since = System.nanoTime();
        try {
            work.run();
        } finally {
            sum.add(System.nanoTime() - since);
        }
    }

    @Override
    public String toString() {
        Duration started = start;
        return "first frame after %.1f ms, imaging %.1f ms, comparing with intake %.1f ms, reporting %.1f ms"
                .formatted(
                        started == null ? Double.NaN : millis(started.toNanos()),
                        millis(imaging),
                        millis(comparing),
                        millis(reporting));
    }

    private static double millis(LongAdder nanos) {
        return millis(nanos.sum());
    }

    private static double millis(long nanos) {
        return nanos / 1e6;
    }
}
