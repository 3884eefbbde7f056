package org.stook.trail.merkle;

/** Where the hashes of complete subtrees are found. */
@FunctionalInterface
public interface Nodes {
    /**
     * The hash over the 2^level leaves from leaf position * 2^level on, all of which are there.
     *
     * @param level 0 for a leaf
     */
    Hash node(int level, long position);

    /**
     * The hash over {@code count} leaves from {@code start} on, complete subtree or the right edge of a tree.
     *
     * @param start a multiple of the smallest power of two that is not below {@code count}
     * @param count 1 or more
     */
    default Hash range(long start, long count) {
        if (Long.bitCount(count) == 1) {
            return node(Long.numberOfTrailingZeros(count), start / count);
        }
        long left = Long.highestOneBit(count);
        return Hash.node(range(start, left), range(start + left, count - left));
    }

    /** The head of the tree of the first {@code size} leaves. */
    default Hash root(long size) {
        return size == 0 ? Hash.empty() : range(0, size);
    }
}
