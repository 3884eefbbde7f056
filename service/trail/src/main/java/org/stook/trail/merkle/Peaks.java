package org.stook.trail.merkle;

import java.util.ArrayList;
import java.util.List;

/**
 * The right edge of a tree: the hashes of its complete subtrees, largest first. All that is needed to go on adding leaves and
 * to tell the head, however large the tree.
 */
public final class Peaks {
    /** Hears of each subtree that has become complete, leaves included. */
    @FunctionalInterface
    public interface Completed {
        void node(int level, long position, Hash hash);
    }

    private final List<Hash> peaks = new ArrayList<>();
    private long size;

    /** Those of the tree of the first {@code size} leaves. */
    public static Peaks of(Nodes nodes, long size) {
        Peaks peaks = new Peaks();
        peaks.size = size;
        long start = 0;
        for (long rest = size; rest > 0; rest -= Long.highestOneBit(rest)) {
            long count = Long.highestOneBit(rest);
            peaks.peaks.add(nodes.range(start, count));
            start += count;
        }
        return peaks;
    }

    public void add(Hash leaf) {
        add(leaf, (level, position, hash) -> {});
    }

    public void add(Hash leaf, Completed completed) {
        Hash hash = leaf;
        completed.node(0, size, hash);
        int level = 0;
        for (long rest = size; (rest & 1) == 1; rest >>= 1) {
            hash = Hash.node(peaks.remove(peaks.size() - 1), hash);
            level++;
            completed.node(level, size >> level, hash);
        }
        peaks.add(hash);
        size++;
    }

    public long size() {
        return size;
    }

    /** The head of the tree as it is now. */
    public Hash root() {
        if (peaks.isEmpty()) {
            return Hash.empty();
        }
        Hash root = peaks.get(peaks.size() - 1);
        for (int i = peaks.size() - 2; i >= 0; i--) {
            root = Hash.node(peaks.get(i), root);
        }
        return root;
    }
}
