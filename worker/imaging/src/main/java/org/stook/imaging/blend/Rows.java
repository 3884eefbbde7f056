package org.stook.imaging.blend;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Future;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.ThreadPoolExecutor;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntConsumer;
import java.util.function.Supplier;

/**
 * Runs loops over rows on a bounded number of threads. The image is cut into strips of a fixed height, so what a row
 * becomes depends neither on the number of threads nor on which of them ran it. Idle threads end by themselves: an
 * abandoned blend leaves nothing behind.
 */
final class Rows {
    /** High enough to make the halo of a strip cheap. */
    private static final int STRIP = 64;

    private final int threads;
    private final ExecutorService helpers;

    Rows(int threads) {
        this.threads = threads;
        ThreadPoolExecutor pool = new ThreadPoolExecutor(
                Math.max(1, threads - 1),
                Math.max(1, threads - 1),
                1,
                TimeUnit.SECONDS,
                new LinkedBlockingQueue<>(),
                Rows::helper);
        pool.allowCoreThreadTimeOut(true);
        this.helpers = pool;
    }

    /** Work on rows {@code from} (inclusive) to {@code to} (exclusive). */
    interface Strip {
        void rows(int from, int to);
    }

    /** Runs {@code strip}, which must need no buffer of its own, over all rows. */
    void run(int height, Strip strip) {
        runWith(height, () -> strip);
    }

    /** Runs over all rows, with one strip worker (and so one set of buffers) a thread. */
    void runWith(int height, Supplier<? extends Strip> worker) {
        each((height + STRIP - 1) / STRIP, () -> {
            Strip strip = worker.get();
            return i -> strip.rows(i * STRIP, Math.min(height, (i + 1) * STRIP));
        });
    }

    /** Runs pieces 0 to {@code count - 1} of some work, with one worker (and so one set of buffers) a thread. */
    void each(int count, Supplier<? extends IntConsumer> worker) {
        AtomicInteger next = new AtomicInteger();
        Runnable share = () -> {
            IntConsumer piece = worker.get();
            for (int i = next.getAndIncrement(); i < count; i = next.getAndIncrement()) piece.accept(i);
        };
        List<Future<?>> running = new ArrayList<>();
        for (int i = 1; i < Math.min(threads, count); i++) running.add(helpers.submit(share));
        try {
            share.run();
        } finally {
            running.forEach(Rows::await);
        }
    }

    /** Waits even when interrupted: a helper still writes into buffers that the caller owns. */
    private static void await(Future<?> helper) {
        boolean interrupted = false;
        while (true) {
            try {
                helper.get();
                break;
            } catch (InterruptedException e) {
                interrupted = true;
            } catch (ExecutionException e) {
                throw new IllegalStateException("blending failed on a helper thread", e.getCause());
            }
        }
        if (interrupted) Thread.currentThread().interrupt();
    }

    private static Thread helper(Runnable work) {
        Thread thread = new Thread(work, "blend-rows");
        thread.setDaemon(true);
        return thread;
    }
}
