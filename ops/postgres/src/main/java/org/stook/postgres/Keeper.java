package org.stook.postgres;

import java.io.IOException;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;

/**
 * Starts a child that the kernel ends with this JVM, when its command goes through {@code setpriv --pdeathsig}.
 *
 * <p>The parent-death signal belongs to the <em>thread</em> that forks: a child of a thread that ends is signalled at once,
 * even though the JVM lives on. So the thread made here starts the child and then does nothing but wait for it.
 */
public final class Keeper {
    private Keeper() {}

    /**
     * Starts what {@code builder} describes, from a thread of this name that lives as long as the child.
     *
     * @throws IOException if the program cannot be started
     */
    public static Process start(ProcessBuilder builder, String name) throws IOException {
        CompletableFuture<Process> started = new CompletableFuture<>();
        Thread thread = new Thread(() -> keep(builder, started), name);
        thread.setDaemon(true);
        thread.start();
        try {
            return started.get();
        } catch (ExecutionException e) {
            throw new IOException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new PostgresUnavailable("interrupted while starting " + name, e);
        }
    }

    private static void keep(ProcessBuilder builder, CompletableFuture<Process> started) {
        try {
            Process process = builder.start();
            started.complete(process);
            process.waitFor();
        } catch (IOException e) {
            started.completeExceptionally(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
