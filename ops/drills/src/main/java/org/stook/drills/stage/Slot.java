package org.stook.drills.stage;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** A place for one worker process, which is started again whenever it ends, as a service manager would. */
public final class Slot implements AutoCloseable {
    private static final long RESTART_MILLIS = 500;

    /**
     * @param javaOptions of the process
     * @param settings as {@code name=value}
     * @param environment on top of ours
     * @param ownHost whether it runs as on a machine of its own, in a network namespace
     * @param memory limit that the kernel enforces, bytes; 0 for none
     */
    public record Setup(
            List<String> javaOptions,
            List<String> settings,
            Map<String, String> environment,
            boolean ownHost,
            long memory) {
        public Setup(List<String> javaOptions, List<String> settings, Map<String, String> environment) {
            this(javaOptions, settings, environment, false, 0);
        }
    }

    private final String name;
    private final Wire wire;
    private final ProcessBuilder builder;
    private final AtomicInteger starts = new AtomicInteger();
    private volatile @Nullable Process process;
    private volatile boolean closed;
    private @Nullable Namespace host;
    private @Nullable MemoryLimit limit;

    Slot(String name, Wire wire, List<String> command, Map<String, String> environment, Path log) {
        this.name = name;
        this.wire = wire;
        this.builder = new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()));
        builder.environment().putAll(environment);
    }

    void open() {
        Thread keeper = new Thread(this::keep, "keeper-" + name);
        keeper.setDaemon(true);
        keeper.start();
    }

    private void keep() {
        try {
            while (!closed) {
                Process started = builder.start();
                process = started;
                starts.incrementAndGet();
                started.waitFor();
                Thread.sleep(RESTART_MILLIS);
            }
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** The worker's id. */
    public String name() {
        return name;
    }

    void on(Namespace itsHost) {
        host = itsHost;
    }

    void under(MemoryLimit itsLimit) {
        limit = itsLimit;
    }

    /** The network of its own that it was given. */
    public Namespace host() {
        return Objects.requireNonNull(host, name + " shares this machine's network");
    }

    public Wire wire() {
        return wire;
    }

    /** How often its process was started. */
    public int starts() {
        return starts.get();
    }

    /** Process id; 0 between two processes. */
    public long pid() {
        Process now = process;
        return now != null && now.isAlive() ? now.pid() : 0;
    }

    /** Processor time of its present process so far. */
    public Duration cpu() {
        Process now = process;
        return now == null ? Duration.ZERO : now.info().totalCpuDuration().orElse(Duration.ZERO);
    }

    /** Ends the process as a service manager does, and waits for it. */
    public void retire() throws InterruptedException {
        closed = true;
        Process now = process;
        if (now != null) {
            now.toHandle().destroy();
            now.waitFor();
        }
    }

    @Override
    public void close() throws IOException {
        closed = true;
        Process now = process;
        if (now != null) {
            // Also one that is stopped has to go.
            now.destroyForcibly().onExit().join();
        }
        if (limit != null) {
            limit.lift();
        }
        wire.close();
        if (host != null) {
            host.close();
        }
    }
}
