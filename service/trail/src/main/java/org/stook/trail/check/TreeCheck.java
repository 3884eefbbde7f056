package org.stook.trail.check;

import java.io.IOException;
import org.jspecify.annotations.Nullable;
import org.stook.trail.SealedLeaf;

/** Holds the database's own leaves against those kept elsewhere, place by place. */
public final class TreeCheck {
    private static final int MOST_NAMED = 20;

    private final Findings findings;

    public TreeCheck(Findings findings) {
        this.findings = findings;
    }

    /** Goes through both to the end of the kept ones; the database may have newer leaves. */
    public void run(LeafSource kept, LeafSource stored) throws IOException {
        long position = 0;
        long different = 0;
        @Nullable SealedLeaf there = stored.next();
        for (SealedLeaf leaf = kept.next(); leaf != null; leaf = kept.next()) {
            if (there == null) {
                findings.bad("the database's tree ends at leaf %d, where the kept one goes on".formatted(position));
                return;
            }
            if (!leaf.equals(there) && ++different <= MOST_NAMED) {
                findings.bad("leaf %d of the database's tree: found entry %d with %s, kept was entry %d with %s"
                        .formatted(position, there.entryId(), there.hash(), leaf.entryId(), leaf.hash()));
            }
            position++;
            there = stored.next();
        }
        if (different > MOST_NAMED) {
            findings.bad("%d more leaves of the database's tree differ".formatted(different - MOST_NAMED));
        }
        if (different == 0) {
            findings.proven("the database's own tree has the same %d leaves".formatted(position));
        }
    }
}
