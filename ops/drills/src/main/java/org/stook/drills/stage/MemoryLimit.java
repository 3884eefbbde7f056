package org.stook.drills.stage;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;

/** A limit on a worker's memory that the kernel enforces by killing it, as a service manager or container sets it. Needs root. */
final class MemoryLimit {
    private static final Path V1 = Path.of("/sys/fs/cgroup/memory");
    private static final Path V2 = Path.of("/sys/fs/cgroup");

    private final Path group;

    private MemoryLimit(Path group) {
        this.group = group;
    }

    static MemoryLimit of(int number, long bytes) throws IOException {
        boolean old = Files.exists(V1);
        Path group = (old ? V1 : V2).resolve("stook-drill-" + number);
        Files.createDirectories(group);
        Files.writeString(group.resolve(old ? "memory.limit_in_bytes" : "memory.max"), Long.toString(bytes));
        return new MemoryLimit(group);
    }

    /** Once its processes have ended. */
    void lift() throws IOException {
        Files.deleteIfExists(group);
    }

    List<String> command(List<String> command) {
        List<String> inside = new ArrayList<>(
                List.of("sh", "-c", "echo $$ > " + group.resolve("cgroup.procs") + " && exec \"$@\"", "sh"));
        inside.addAll(command);
        return inside;
    }
}
