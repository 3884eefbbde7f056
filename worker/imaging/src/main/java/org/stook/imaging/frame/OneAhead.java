package org.stook.imaging.frame;

import java.io.IOException;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.FutureTask;

/**
 * Things made one after the other, each a step ahead: while one is used, the next is made on a thread of its own, unless one
 * thread is all there may be. Not for several threads at once.
 *
 * @param <T> what is made
 */
public final class OneAhead<T> implements AutoCloseable {
    private final int count;
    private final Maker<T> maker;
    private final boolean alone;
    private final ExecutorService thread = Executors.newSingleThreadExecutor(task -> {
        Thread ahead = new Thread(task, "one-ahead");
        ahead.setDaemon(true);
        return ahead;
    });
    private FutureTask<T> next;
    private int begun;

    /**
     * Begins with the first.
     *
     * @param count how many there are, at least 1
     * @param threads how many threads may be used
     */
    public OneAhead(int count, int threads, Maker<T> maker) {
        this.count = count;
        this.maker = maker;
        this.alone = threads == 1;
        this.next = begin();
    }

    /** Makes a thing. */
    public interface Maker<T> {
        /** @param index 0 to count - 1, asked for in that order, once each */
        T make(int index) throws IOException;
    }

    /** The next thing; that after it is begun. */
    public T next() throws IOException {
        FutureTask<T> task = next;
        // Does nothing if it was begun already.
        task.run();
        if (begun < count) next = begin();
        try {
            return task.get();
        } catch (ExecutionException e) {
            if (e.getCause() instanceof IOException io) throw io;
            if (e.getCause() instanceof RuntimeException bug) throw bug;
            throw new IllegalStateException("what was made ahead failed", e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IOException("interrupted while waiting for what is made ahead", e);
        }
    }

    private FutureTask<T> begin() {
        int index = begun++;
        FutureTask<T> task = new FutureTask<>(() -> maker.make(index));
        if (!alone) thread.execute(task);
        return task;
    }

    /** Waits for nothing: what is being made is left to itself. */
    @Override
    public void close() {
        thread.shutdownNow();
    }
}
