package org.stook.trail.check;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Entry;
import org.stook.trail.Head;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;
import org.stook.trail.merkle.Peaks;

/** A small trail in memory, with a head over every tenth entry. */
final class Trail {
    static final Instant START = Instant.parse("2026-03-02T09:00:00Z");

    final List<Entry> entries = new ArrayList<>();
    final List<SealedLeaf> leaves = new ArrayList<>();
    final List<Head> heads = new ArrayList<>();
    private final Peaks peaks = new Peaks();

    /** Entries 1 to {@code count}, a minute apart. */
    Trail(int count) {
        for (int id = 1; id <= count; id++) seal(entry(id, id));
    }

    static Entry entry(long id, int minute) {
        return new Entry(id, "9" + id, START.plusSeconds(60L * minute), "ada", "sign-in", "person/" + id, "{}");
    }

    void seal(Entry entry) {
        Hash previous =
                heads.isEmpty() ? Hash.empty() : heads.get(heads.size() - 1).root();
        entries.add(entry);
        entries.sort(Comparator.comparingLong(Entry::id));
        leaves.add(new SealedLeaf(entry.id(), entry.leaf()));
        peaks.add(entry.leaf());
        if (peaks.size() % 10 == 0) {
            heads.add(new Head(peaks.size(), peaks.root(), previous, entry.at().plusSeconds(5), null));
        }
    }

    Findings check() throws Exception {
        Findings findings = new Findings();
        new TrailCheck(KnownHeads.of(heads, null), findings).run(leafSource(), entrySource());
        return findings;
    }

    LeafSource leafSource() {
        Iterator<SealedLeaf> all = leaves.iterator();
        return new LeafSource() {
            @Override
            public @Nullable SealedLeaf next() {
                return all.hasNext() ? all.next() : null;
            }

            @Override
            public void close() {}
        };
    }

    private EntrySource entrySource() {
        Iterator<Entry> all = entries.iterator();
        return new EntrySource() {
            @Override
            public @Nullable Entry next() {
                return all.hasNext() ? all.next() : null;
            }

            @Override
            public void close() {}
        };
    }
}
