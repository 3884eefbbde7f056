package org.stook.app.queue;

import java.nio.file.Files;
import java.nio.file.Path;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.util.unit.DataSize;

/**
 * Whether composites can be written where they go. A share that is full or read-only is marked so: nothing that would be
 * published there is claimed until it is well again, which is found out here, too. That a share is gone is the intake's to
 * say.
 */
@Component
public class ShareRoom {
    private static final Logger LOG = LoggerFactory.getLogger(ShareRoom.class);

    private record State(String name, @Nullable String text) {}

    private final JdbcClient jdbc;
    private final long leastFree;

    /** @param leastFree what must be free for a run to be begun */
    @Autowired
    ShareRoom(JdbcClient jdbc, @Value("${stook.room.least-free:1GB}") DataSize leastFree) {
        this(jdbc, leastFree.toBytes());
    }

    ShareRoom(JdbcClient jdbc, long leastFree) {
        this.jdbc = jdbc;
        this.leastFree = leastFree;
    }

    /** One look at every share that composites go to. */
    public void step() {
        Outputs.of(jdbc).forEach(output -> note(output, state(output)));
    }

    private State state(Outputs.Output output) {
        Path root = output.root();
        if (!output.isThere()) {
            return new State("GONE", root + " does not hold this share's mark, so it counts as not mounted");
        }
        // Asks the file system itself: as root, too, it says no on one that is mounted read-only.
        if (!Files.isWritable(root)) {
            return new State("READ_ONLY", root + " cannot be written to; runs wait until it can");
        }
        long free = root.toFile().getUsableSpace();
        return free >= leastFree
                ? new State("OK", null)
                : new State(
                        "FULL",
                        "%d MiB are free in %s, %d are wanted; runs wait until there is room"
                                .formatted(free >> 20, root, leastFree >> 20));
    }

    private void note(Outputs.Output output, State state) {
        int changed = jdbc.sql("""
                        update stook.share set state = :state, state_text = :text, changed_at = now()
                        where id = :id and state <> :state
                          and (state in ('FULL', 'READ_ONLY') or (state = 'OK' and :state <> 'GONE'))""")
                .param("state", state.name())
                .param("text", state.text())
                .param("id", output.shareId())
                .update();
        if (changed == 1) {
            LOG.warn("share {}: {}", output.name(), state.text() == null ? "can be written to" : state.text());
        }
    }
}
