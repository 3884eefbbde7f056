package org.stook.app.audit;

import java.io.IOException;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.trail.Entry;
import org.stook.trail.Head;
import org.stook.trail.HeadKey;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;
import org.stook.trail.merkle.Peaks;

/**
 * Makes leaves of new audit entries and a head over them. Not in the transaction of the act: chaining there would make all
 * work wait for one lock. Entries are taken from a list that each transaction adds its own to, so one that commits late is
 * sealed late, and none is passed over.
 */
@Component
public class Sealer {
    /** Entries under one head at most; enough that a backlog is soon through, few enough for one transaction. */
    private static final int AT_ONCE = 20_000;
    /** Held while a head is made, whoever makes it; the number is ours and means nothing else. */
    private static final long LOCK = 5_706_831_442L;

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final TreeStore tree;
    private final Heads heads;
    private final @Nullable HeadKey key;

    Sealer(JdbcClient jdbc, TransactionOperations transaction, TreeStore tree, Heads heads, AuditSettings settings) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.tree = tree;
        this.heads = heads;
        this.key = key(settings);
    }

    private static @Nullable HeadKey key(AuditSettings settings) {
        try {
            return settings.key() == null ? null : HeadKey.open(settings.key());
        } catch (IOException e) {
            throw new IllegalStateException("the key that signs the audit trail's heads: " + e.getMessage(), e);
        }
    }

    @Nullable
    HeadKey key() {
        return key;
    }

    /**
     * Seals what is committed by now.
     *
     * @return how many entries
     * @throws IllegalStateException if the stored tree does not have the head that was made of it: somebody changed it
     */
    public int step() {
        int sealed = 0;
        int now;
        do {
            Integer more = transaction.execute(status -> sealSome());
            now = more == null ? 0 : more;
            sealed += now;
        } while (now == AT_ONCE);
        return sealed;
    }

    private int sealSome() {
        jdbc.sql("select pg_advisory_xact_lock(:lock)")
                .param("lock", LOCK)
                .query((row, n) -> n)
                .list();
        List<SealedLeaf> leaves = open();
        if (leaves.isEmpty()) {
            return 0;
        }
        Head last = heads.newest().orElse(null);
        Peaks peaks = Peaks.of(tree, last == null ? 0 : last.size());
        Hash previous = peaks.root();
        if (last != null && !previous.equals(last.root())) {
            throw new IllegalStateException(
                    "the audit tree was changed: over %d entries its head is %s, but %s was sealed; nothing more is sealed, see verify"
                            .formatted(last.size(), previous, last.root()));
        }
        tree.add(peaks, leaves);
        close(leaves);
        Head head = new Head(peaks.size(), peaks.root(), previous, heads.now(), null);
        heads.add(key == null ? head : head.signed(key));
        return leaves.size();
    }

    private List<SealedLeaf> open() {
        return jdbc.sql("""
                        select e.id, e.xid::text, e.at, e.actor, e.kind, e.subject, e.body::text
                        from stook.audit_open o join stook.audit_entry e on e.id = o.entry_id order by e.id limit :limit""").param("limit", AT_ONCE).query((row, n) -> entry(row)).stream()
                .map(entry -> new SealedLeaf(entry.id(), entry.leaf()))
                .toList();
    }

    private void close(List<SealedLeaf> leaves) {
        jdbc.sql("delete from stook.audit_open where entry_id = any(:ids)")
                .param("ids", leaves.stream().map(SealedLeaf::entryId).toArray(Long[]::new))
                .update();
    }

    static Entry entry(ResultSet row) throws SQLException {
        return new Entry(
                row.getLong(1),
                row.getString(2),
                row.getObject(3, OffsetDateTime.class).toInstant(),
                row.getString(4),
                row.getString(5),
                row.getString(6),
                row.getString(7));
    }
}
