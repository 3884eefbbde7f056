package org.stook.postgres;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;

/**
 * Starts a child that the kernel ends with this JVM.
 *
 * <p>The parent-death signal belongs to the <em>thread</em> that forks: a child of a thread that ends is signalled at once,
 * even though the JVM lives on. So the thread made here starts the child and then does nothing but wait for it.
 */
final class Keeper {
    private Keeper() {}

    static Process start(List<String> command, Path log) throws IOException {
        CompletableFuture<Process> started = new CompletableFuture<>();
        Thread thread = new Thread(() -> keep(command, log, started), "local-postgres");
        thread.setDaemon(true);
        thread.start();
        try {
            return started.get();
        } catch (ExecutionException e) {
            throw new IOException(e.getCause());
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new PostgresUnavailable("interrupted while starting PostgreSQL", e);
        }
    }

    private static void keep(List<String> command, Path log, CompletableFuture<Process> started) {
        try {
            Process process = Command.logged(command, log).start();
            started.complete(process);
            process.waitFor();
        } catch (IOException e) {
            started.completeExceptionally(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
