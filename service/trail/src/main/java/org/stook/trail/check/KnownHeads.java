package org.stook.trail.check;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.stook.trail.Head;
import org.stook.trail.PublicHeadKey;
import org.stook.trail.file.HeadFolder;
import org.stook.trail.merkle.Hash;

/** Heads that the checker holds and trusts, as they were kept where nobody could change them. */
public final class KnownHeads {
    private final TreeMap<Long, Head> bySize = new TreeMap<>();
    private final @Nullable PublicHeadKey key;

    private KnownHeads(@Nullable PublicHeadKey key) {
        this.key = key;
    }

    /**
     * @param file one head a line
     * @param key of the studio, null: signatures are not looked at
     */
    public static KnownHeads read(Path file, @Nullable PublicHeadKey key) throws IOException {
        return of(HeadFolder.readHeads(file), key);
    }

    public static KnownHeads of(List<Head> heads, @Nullable PublicHeadKey key) {
        KnownHeads known = new KnownHeads(key);
        heads.forEach(head -> known.bySize.put(head.size(), head));
        return known;
    }

    /** Whether the heads hang together and are the studio's. */
    public void check(Findings findings) {
        Hash previous = null;
        int bad = 0;
        for (Head head : bySize.values()) {
            if (previous != null && !head.previous().equals(previous)) {
                findings.bad("the head over %d entries of %s does not name the head before it"
                        .formatted(head.size(), head.at()));
                bad++;
            }
            if (key != null && !head.signedBy(key)) {
                findings.bad("the head over %d entries of %s is not signed by the key %s"
                        .formatted(head.size(), head.at(), key.fingerprint()));
                bad++;
            }
            previous = head.root();
        }
        if (bad == 0 && !bySize.isEmpty()) {
            findings.proven("%d heads, the last over %d entries of %s, name each other%s"
                    .formatted(
                            bySize.size(),
                            bySize.lastKey(),
                            bySize.lastEntry().getValue().at(),
                            key == null ? "" : " and are signed by the key " + key.fingerprint()));
        }
        if (key == null) {
            findings.unproven("no key was given: that the studio made these heads rests on where you have them from");
        }
    }

    Optional<Head> ofSize(long size) {
        return Optional.ofNullable(bySize.get(size));
    }

    /** The last head over at most so many entries. */
    Optional<Head> upTo(long size) {
        return Optional.ofNullable(bySize.floorEntry(size)).map(entry -> entry.getValue());
    }

    long lastSize() {
        return bySize.isEmpty() ? 0 : bySize.lastKey();
    }

    int count() {
        return bySize.size();
    }

    @Nullable
    PublicHeadKey key() {
        return key;
    }
}
