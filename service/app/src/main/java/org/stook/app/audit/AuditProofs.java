package org.stook.app.audit;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.trail.Entry;
import org.stook.trail.Head;
import org.stook.trail.Proof;
import org.stook.trail.merkle.Proofs;

/** Proofs that audit entries are in the trail, for those who take a publication away. */
@Component
public class AuditProofs {
    private record Place(long position, Entry entry) {}

    private final JdbcClient jdbc;
    private final TreeStore tree;
    private final Heads heads;
    private final Sealer sealer;

    AuditProofs(JdbcClient jdbc, TreeStore tree, Heads heads, Sealer sealer) {
        this.jdbc = jdbc;
        this.tree = tree;
        this.heads = heads;
        this.sealer = sealer;
    }

    /**
     * All entries so far about a published run, its stack and the publication, under the newest head; new ones are sealed
     * first. Goes into a bag as the file {@value Proof#FILE}.
     */
    public Proof ofPublication(long runId, long stackId) {
        return of(List.of("run/" + runId, "stack/" + stackId, "publication/" + runId));
    }

    /**
     * All entries so far about the subjects, under the newest head; new ones are sealed first.
     *
     * @throws IllegalStateException if there is no entry at all yet
     */
    public Proof of(Collection<String> subjects) {
        sealer.step();
        Head head = heads.newest().orElseThrow(() -> new IllegalStateException("the audit trail has no entry yet"));
        List<Place> places = jdbc.sql("""
                        select e.id, e.xid::text, e.at, e.actor, e.kind, e.subject, e.body::text, l.position
                        from stook.audit_entry e join stook.audit_leaf l on l.entry_id = e.id
                        where e.subject = any(:subjects) and l.position < :size order by l.position""")
                .param("subjects", subjects.toArray(String[]::new))
                .param("size", head.size())
                .query((row, n) -> new Place(row.getLong(8), Sealer.entry(row)))
                .list();
        return new Proof(
                head,
                places.stream()
                        .map(place -> new Proof.Proven(
                                place.position(),
                                place.entry().canonical(),
                                Proofs.inclusion(tree, place.position(), head.size())))
                        .toList());
    }

    /** That the trail under one head is the beginning of the trail under a later one; empty if there is no such head. */
    public Optional<List<String>> consistency(long first, long second) {
        if (first < 1
                || first > second
                || heads.ofSize(first).isEmpty()
                || heads.ofSize(second).isEmpty()) {
            return Optional.empty();
        }
        return Optional.of(Proofs.consistency(tree, first, second).stream()
                .map(hash -> hash.hex())
                .toList());
    }
}
