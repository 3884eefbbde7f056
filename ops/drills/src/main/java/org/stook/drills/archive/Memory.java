package org.stook.drills.archive;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.TimeUnit;

/** How much memory a process has, as the system counts it: resident pages that belong to it alone. */
final class Memory {
    private final Path status;
    private long highest;

    Memory(long pid) {
        this.status = Path.of("/proc/" + pid + "/status");
    }

    /** Once it has come to rest: the lowest of a few looks. */
    long settled() throws IOException, InterruptedException {
        long lowest = Long.MAX_VALUE;
        for (int i = 0; i < 6; i++) {
            TimeUnit.MILLISECONDS.sleep(500);
            lowest = Math.min(lowest, now());
        }
        return lowest;
    }

    void look() throws IOException {
        highest = Math.max(highest, now());
    }

    long highest() {
        return highest;
    }

    private long now() throws IOException {
        for (String line : Files.readAllLines(status)) {
            if (line.startsWith("RssAnon:")) {
                return 1024 * Long.parseLong(line.replaceAll("[^0-9]", ""));
            }
        }
        throw new IOException(status + " says nothing of RssAnon");
    }
}
