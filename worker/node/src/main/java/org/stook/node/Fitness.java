package org.stook.node;

import java.util.Optional;
import org.stook.node.job.Workshop;
import org.stook.node.publish.Room;
import org.stook.node.publish.Shares.Trouble;

/** Whether this machine can work at all: its shares are there and its disks have room. */
record Fitness(Workshop workshop, Room room) {

    /** A sentence on what keeps it from working. */
    Optional<String> trouble() {
        return workshop.shares()
                .trouble()
                .or(() -> room.trouble("the local disk for scratch files", workshop.scratch()))
                .map(Trouble::sentence);
    }

    /** Bytes free for scratch files. */
    long free() {
        return workshop.scratch().toFile().getUsableSpace();
    }
}
