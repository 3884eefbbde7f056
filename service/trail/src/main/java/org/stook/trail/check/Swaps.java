package org.stook.trail.check;

import java.util.ArrayList;
import java.util.List;
import org.stook.trail.Entry;
import org.stook.trail.SealedLeaf;

/** Entries that differ from their leaves; those that stand in each other's places are said to be in another order. */
final class Swaps {
    /** Each is held against each. */
    private static final int MOST_COMPARED = 300;

    private record Pair(SealedLeaf leaf, Entry entry) {
        /** Whether this entry, but for its number, is what the other's leaf was made of. */
        boolean isOnce(SealedLeaf other) {
            return new Entry(
                            other.entryId(),
                            entry.xid(),
                            entry.at(),
                            entry.actor(),
                            entry.kind(),
                            entry.subject(),
                            entry.body())
                    .leaf()
                    .equals(other.hash());
        }
    }

    private final List<Pair> compared = new ArrayList<>();
    private final Numbers rest = new Numbers();

    void add(SealedLeaf leaf, Entry entry) {
        if (compared.size() < MOST_COMPARED) {
            compared.add(new Pair(leaf, entry));
        } else {
            rest.add(leaf.entryId());
        }
    }

    void say(Findings findings) {
        Numbers edited = new Numbers();
        for (Pair pair : compared) {
            compared.stream()
                    .filter(other -> pair.isOnce(other.leaf()))
                    .findFirst()
                    .ifPresentOrElse(
                            other -> findings.bad("entry %d: holds what was entry %d (put in another order)"
                                    .formatted(pair.entry().id(), other.leaf().entryId())),
                            () -> edited.add(pair.entry().id()));
        }
        if (!edited.isEmpty()) {
            findings.bad(edited.named() + ": not what was sealed (edited)");
        }
        if (!rest.isEmpty()) {
            findings.bad(rest.named() + ": not what was sealed (edited or put in another order)");
        }
    }
}
