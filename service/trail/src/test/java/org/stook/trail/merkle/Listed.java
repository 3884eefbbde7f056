package org.stook.trail.merkle;

import java.util.List;

/** Every node worked out anew from a list of leaves: slow and obvious. */
record Listed(List<Hash> leaves) implements Nodes {
    @Override
    public Hash node(int level, long position) {
        return level == 0
                ? leaves.get((int) position)
                : Hash.node(node(level - 1, 2 * position), node(level - 1, 2 * position + 1));
    }
}
