package org.stook.imaging.frame;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.IntConsumer;

/**
 * Numbered pieces of work spread over threads. Which thread does which piece is left to chance, so a piece may write only
 * what belongs to its own number; sums over pieces are taken afterwards, in order. Then the result does not depend on the
 * number of threads.
 */
public final class Parallel {
    private Parallel() {}

    /**
     * Runs {@code work} for 0 to {@code count - 1} and returns when all are done.
     *
     * @param threads at least 1; the calling thread is one of them
     * @throws RuntimeException or Error: the first one that a piece threw, after all threads have stopped
     */
    public static void forEach(int count, int threads, IntConsumer work) {
        int helpers = Math.min(threads, count) - 1;
        AtomicInteger next = new AtomicInteger();
        AtomicReference<Throwable> failure = new AtomicReference<>();
        Runnable loop = () -> {
            try {
                for (int i = next.getAndIncrement(); i < count; i = next.getAndIncrement()) work.accept(i);
            } catch (RuntimeException | Error e) {
                next.set(count);
                failure.compareAndSet(null, e);
            }
        };
        List<Thread> started = new ArrayList<>();
        for (int h = 0; h < helpers; h++) {
            Thread thread = new Thread(loop, "imaging-" + h);
            thread.setDaemon(true);
            thread.start();
            started.add(thread);
        }
        loop.run();
        started.forEach(Parallel::await);
        rethrow(failure.get());
    }

    private static void await(Thread thread) {
        boolean interrupted = false;
        while (thread.isAlive()) {
            try {
                thread.join();
            } catch (InterruptedException e) {
                interrupted = true;
            }
        }
        if (interrupted) Thread.currentThread().interrupt();
    }

    private static void rethrow(@org.jspecify.annotations.Nullable Throwable failure) {
        if (failure instanceof Error error) throw error;
        if (failure instanceof RuntimeException exception) throw exception;
    }
}
