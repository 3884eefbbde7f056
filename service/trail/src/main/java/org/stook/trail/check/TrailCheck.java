package org.stook.trail.check;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Entry;
import org.stook.trail.Head;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;
import org.stook.trail.merkle.Peaks;

/**
 * Walks along the leaves that were kept and the entries that are there now. The heads say whether the leaves are the right
 * ones; each leaf says whether its entry is still what it was.
 */
public final class TrailCheck {
    /** A transaction may be open for a while before its entries are sealed; longer than this is worth a word. */
    private static final Duration LONG_OPEN = Duration.ofMinutes(10);
    /** Entries that were passed and whose leaf may come later; more than this are taken for strangers at once. */
    private static final int MOST_WAITING = 100_000;

    private final KnownHeads heads;
    private final Findings findings;
    private final Peaks peaks = new Peaks();
    private final TreeMap<Long, Entry> waiting = new TreeMap<>();
    private final Numbers missing = new Numbers();
    private final Numbers strange = new Numbers();
    private final Numbers late = new Numbers();
    private final Swaps changed = new Swaps();
    private @Nullable Head before;
    private @Nullable Entry current;
    private long highest;
    private long matched;
    private int headsMet;
    private boolean leavesHold = true;

    public TrailCheck(KnownHeads heads, Findings findings) {
        this.heads = heads;
        this.findings = findings;
    }

    /** Goes through both to their ends. */
    public void run(LeafSource leaves, EntrySource entries) throws IOException {
        heads.check(findings);
        current = entries.next();
        for (SealedLeaf leaf = leaves.next(); leaf != null; leaf = leaves.next()) {
            peaks.add(leaf.hash());
            highest = Math.max(highest, leaf.entryId());
            match(leaf, entries);
            meet();
        }
        sayHeads();
        sayEntries(entries);
    }

    private void meet() {
        heads.ofSize(peaks.size()).ifPresent(head -> {
            headsMet++;
            before = head;
            Hash root = peaks.root();
            if (!root.equals(head.root()) && leavesHold) {
                leavesHold = false;
                findings.bad("the head over %d entries of %s does not fit: the leaves give %s, it says %s"
                        .formatted(head.size(), head.at(), root, head.root()));
            }
        });
    }

    private void match(SealedLeaf leaf, EntrySource entries) throws IOException {
        while (current != null && current.id() < leaf.entryId()) {
            pass(current);
            current = entries.next();
        }
        Entry entry;
        if (current != null && current.id() == leaf.entryId()) {
            entry = current;
            current = entries.next();
        } else {
            entry = waiting.remove(leaf.entryId());
        }
        if (entry == null) {
            missing.add(leaf.entryId());
        } else if (entry.leaf().equals(leaf.hash())) {
            matched++;
            lateness(entry);
        } else {
            changed.add(leaf, entry);
        }
    }

    private void pass(Entry entry) {
        if (waiting.size() < MOST_WAITING) {
            waiting.put(entry.id(), entry);
        } else {
            strange.add(entry.id());
        }
    }

    /** An entry that says it happened long before the head before it: kept back, or slipped in with an earlier date. */
    private void lateness(Entry entry) {
        Instant sealed = before == null ? Instant.MIN : before.at();
        if (before != null && entry.at().isBefore(sealed.minus(LONG_OPEN))) {
            late.add(entry.id());
        }
    }

    private void sayHeads() {
        if (peaks.size() < heads.lastSize()) {
            findings.bad("there are %d leaves, but the last head is over %d entries: the rest is gone"
                    .formatted(peaks.size(), heads.lastSize()));
        }
        if (headsMet == 0) {
            findings.unproven(
                    "no head over at most %d entries was given, so the leaves are not proven".formatted(peaks.size()));
        } else if (leavesHold && peaks.size() >= heads.lastSize()) {
            findings.proven(
                    "the leaves of %d entries have the root of each of %d heads".formatted(heads.lastSize(), headsMet));
        }
        if (peaks.size() > heads.lastSize() && heads.count() > 0) {
            findings.unproven("%d leaves are under no head that was given".formatted(peaks.size() - heads.lastSize()));
        }
    }

    private void sayEntries(EntrySource entries) throws IOException {
        Numbers open = new Numbers();
        waiting.keySet().forEach(strange::add);
        for (; current != null; current = entries.next()) {
            (current.id() > highest ? open : strange).add(current.id());
        }
        changed.say(findings);
        if (!missing.isEmpty()) {
            findings.bad(missing.named()
                    + ": sealed, but not there any more (deleted, cut off, or an older state was restored)");
        }
        if (!strange.isEmpty()) {
            findings.bad(
                    strange.named() + ": there, but never sealed among its neighbours (inserted, or not sealed yet)");
        }
        if (!late.isEmpty()) {
            findings.bad(
                    late.named() + ": dated more than " + LONG_OPEN.toMinutes()
                            + " minutes before the head before it (slipped in with an earlier date, or of a very long transaction)");
        }
        if (!open.isEmpty()) {
            findings.unproven(open.named() + ": newer than the leaves, not proven by them");
        }
        findings.proven(matched + " entries are what they were when they were sealed");
    }
}
