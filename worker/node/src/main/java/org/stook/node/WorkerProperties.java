package org.stook.node;

import java.net.InetAddress;
import java.net.UnknownHostException;
import java.nio.file.Path;
import java.util.Map;
import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.boot.context.properties.ConfigurationProperties;

/** What is set for one worker process, as {@code stook.worker.*}. */
@ConfigurationProperties("stook.worker")
public final class WorkerProperties {
    private static final Pattern ID = Pattern.compile("[A-Za-z0-9._-]{1,50}");
    private static final int HOST_LENGTH = 20;

    private final String id;
    private final int threads;
    private final Path scratch;
    private final Map<String, Path> shares;

    /**
     * @param id unique among all workers, 1 to 50 of letters, digits, dot, dash and underscore; by default host, process id
     *     and a random part
     * @param threads for the computing of one composite; by default one a processor
     * @param scratch local folder for files on their way, below which each process has its own; by default in the system's
     *     temporary folder
     * @param shares by the share's name: where it is mounted here, if elsewhere than for the service
     */
    public WorkerProperties(
            @Nullable String id,
            @Nullable Integer threads,
            @Nullable Path scratch,
            @Nullable Map<String, Path> shares) {
        this.id = id == null || id.isBlank() ? ownId() : id;
        this.threads = threads == null ? Runtime.getRuntime().availableProcessors() : threads;
        this.scratch = scratch == null ? Path.of(System.getProperty("java.io.tmpdir"), "stook-node") : scratch;
        this.shares = shares == null ? Map.of() : Map.copyOf(shares);
        check(ID.matcher(this.id).matches(), "id", this.id, "1 to 50 of letters, digits, '.', '-' and '_'");
        check(this.threads >= 1, "threads", this.threads, "1 or more");
    }

    public String id() {
        return id;
    }

    public int threads() {
        return threads;
    }

    public Path scratch() {
        return scratch;
    }

    public Map<String, Path> shares() {
        return shares;
    }

    static String host() {
        try {
            return InetAddress.getLocalHost().getHostName();
        } catch (UnknownHostException e) {
            return "unknown";
        }
    }

    private static String ownId() {
        String host = host().replaceAll("[^A-Za-z0-9._-]", "-");
        return host.substring(0, Math.min(HOST_LENGTH, host.length()))
                + "-" + ProcessHandle.current().pid()
                + "-" + UUID.randomUUID().toString().substring(0, 8);
    }

    private static void check(boolean good, String name, Object found, String expected) {
        if (!good) {
            throw new IllegalArgumentException("stook.worker." + name + " is '" + found + "', expected " + expected);
        }
    }
}
