package org.stook.node;

import java.io.IOException;
import java.nio.file.Path;
import java.util.function.BooleanSupplier;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.SmartLifecycle;
import org.stook.imaging.composite.CannotCompose;
import org.stook.imaging.composite.rehearsal.Rehearsal;

/**
 * Lets a new process rehearse while nothing is queued, so that the first stack is composed nearly as fast as the next. Whatever
 * is queued goes first: the rehearsal ends as soon as this process has work.
 */
final class WarmUp implements SmartLifecycle {
    private static final Logger LOG = LoggerFactory.getLogger(WarmUp.class);
    private static final long LONGEST_STOP_MS = 5_000;

    private final Path scratch;
    private final int threads;
    private final BooleanSupplier busy;
    private volatile @Nullable Thread running;

    /** @param busy whether this process has work */
    WarmUp(Path scratch, int threads, BooleanSupplier busy) {
        this.scratch = scratch;
        this.threads = threads;
        this.busy = busy;
    }

    /** Work came, or the process ends. */
    private static final class Over extends RuntimeException {
        Over() {
            super("no longer rehearsing", null, false, false);
        }
    }

    @Override
    public void start() {
        Thread thread = new Thread(this::rehearse, "rehearsal");
        thread.setDaemon(true);
        running = thread;
        thread.start();
    }

    void rehearse() {
        try {
            Rehearsal.run(scratch, threads, (stage, part) -> goOn());
            LOG.info("rehearsed");
        } catch (Over e) {
            LOG.debug("rehearsal ended early");
        } catch (IOException | CannotCompose | RuntimeException e) {
            LOG.warn("the rehearsal failed, and the first stack will take longer than the next: {}", e.toString());
        }
    }

    private void goOn() {
        if (busy.getAsBoolean() || running == null) throw new Over();
    }

    @Override
    public void stop() {
        Thread thread = running;
        running = null;
        if (thread == null) return;
        try {
            thread.join(LONGEST_STOP_MS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public boolean isRunning() {
        return running != null;
    }
}
