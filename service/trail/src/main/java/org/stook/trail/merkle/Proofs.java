package org.stook.trail.merkle;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;

/** Makes and checks proofs (RFC 9162, sections 2.1.3 and 2.1.4). */
public final class Proofs {
    private Proofs() {}

    /**
     * The siblings on the way from a leaf to the head, the leaf's own first.
     *
     * @param position of the leaf, below {@code size}
     */
    public static List<Hash> inclusion(Nodes nodes, long position, long size) {
        Objects.checkIndex(position, size);
        List<Hash> path = new ArrayList<>();
        inclusion(nodes, position, 0, size, path);
        return path;
    }

    private static void inclusion(Nodes nodes, long position, long start, long count, List<Hash> path) {
        if (count == 1) {
            return;
        }
        long left = leftPart(count);
        if (position < left) {
            inclusion(nodes, position, start, left, path);
            path.add(nodes.range(start + left, count - left));
        } else {
            inclusion(nodes, position - left, start + left, count - left, path);
            path.add(nodes.range(start, left));
        }
    }

    /**
     * Proof that the tree of {@code first} leaves is the beginning of the tree of {@code second}.
     *
     * @param first 1 to {@code second}
     */
    public static List<Hash> consistency(Nodes nodes, long first, long second) {
        Objects.checkIndex(first - 1, second);
        List<Hash> path = new ArrayList<>();
        consistency(nodes, first, 0, second, true, path);
        return path;
    }

    private static void consistency(Nodes nodes, long first, long start, long count, boolean whole, List<Hash> path) {
        if (first == count) {
            if (!whole) {
                path.add(nodes.range(start, count));
            }
            return;
        }
        long left = leftPart(count);
        if (first <= left) {
            consistency(nodes, first, start, left, whole, path);
            path.add(nodes.range(start + left, count - left));
        } else {
            consistency(nodes, first - left, start + left, count - left, false, path);
            path.add(nodes.range(start, left));
        }
    }

    /** The largest power of two below {@code count}. */
    private static long leftPart(long count) {
        return Long.highestOneBit(count - 1);
    }

    /** Whether the leaf stands at the position in the tree with this head (RFC 9162, section 2.1.3.2). */
    public static boolean included(Hash leaf, long position, long size, List<Hash> path, Hash root) {
        if (position < 0 || position >= size) {
            return false;
        }
        long from = position;
        long last = size - 1;
        Hash hash = leaf;
        for (Hash sibling : path) {
            if (last == 0) {
                return false;
            }
            if ((from & 1) == 1 || from == last) {
                hash = Hash.node(sibling, hash);
                while (from != 0 && (from & 1) == 0) {
                    from >>= 1;
                    last >>= 1;
                }
            } else {
                hash = Hash.node(hash, sibling);
            }
            from >>= 1;
            last >>= 1;
        }
        return last == 0 && hash.equals(root);
    }

    /**
     * Whether a tree with the head {@code oldRoot} is the beginning of one with the head {@code newRoot} (RFC 9162, section
     * 2.1.4.2).
     */
    public static boolean consistent(long first, long second, List<Hash> path, Hash oldRoot, Hash newRoot) {
        if (first < 1 || first > second) {
            return false;
        }
        if (first == second) {
            return path.isEmpty() && oldRoot.equals(newRoot);
        }
        List<Hash> steps = new ArrayList<>(path);
        if (Long.bitCount(first) == 1) {
            steps.add(0, oldRoot);
        }
        return !steps.isEmpty() && climbs(first - 1, second - 1, steps, oldRoot, newRoot);
    }

    private static boolean climbs(long first, long second, List<Hash> steps, Hash oldRoot, Hash newRoot) {
        long from = first;
        long last = second;
        while ((from & 1) == 1) {
            from >>= 1;
            last >>= 1;
        }
        Hash old = steps.get(0);
        Hash grown = old;
        for (Hash sibling : steps.subList(1, steps.size())) {
            if (last == 0) {
                return false;
            }
            if ((from & 1) == 1 || from == last) {
                old = Hash.node(sibling, old);
                grown = Hash.node(sibling, grown);
                while (from != 0 && (from & 1) == 0) {
                    from >>= 1;
                    last >>= 1;
                }
            } else {
                grown = Hash.node(grown, sibling);
            }
            from >>= 1;
            last >>= 1;
        }
        return last == 0 && old.equals(oldRoot) && grown.equals(newRoot);
    }
}
