package org.stook.app.audit;

import java.util.ArrayList;
import java.util.List;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;
import org.stook.trail.merkle.Nodes;
import org.stook.trail.merkle.Peaks;

/** The hash tree in the database: its leaves, and every eighth level above them. */
@Component
class TreeStore implements Nodes {
    private static final int KEPT_LEVELS = 8;

    private final JdbcClient jdbc;

    TreeStore(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    @Override
    public Hash node(int level, long position) {
        int above = level % KEPT_LEVELS;
        long count = 1L << above;
        List<Hash> hashes = kept(level - above, position * count, count);
        if (hashes.size() != count) {
            throw new IllegalStateException("the stored tree has gaps: node %d of level %d needs %d hashes, found %d"
                    .formatted(position, level, count, hashes.size()));
        }
        Peaks peaks = new Peaks();
        hashes.forEach(peaks::add);
        return peaks.root();
    }

    private List<Hash> kept(int level, long from, long count) {
        String sql = level == 0
                ? "select hash from stook.audit_leaf where position >= :from and position < :end order by position"
                : "select hash from stook.audit_node where level = :level and position >= :from and position < :end"
                        + " order by position";
        return jdbc.sql(sql)
                .param("level", level)
                .param("from", from)
                .param("end", from + count)
                .query((row, n) -> Hash.of(row.getBytes(1)))
                .list();
    }

    /** Leaves from the position on. */
    List<SealedLeaf> leaves(long from, long count) {
        return jdbc.sql("select entry_id, hash from stook.audit_leaf where position >= :from and position < :end"
                        + " order by position")
                .param("from", from)
                .param("end", from + count)
                .query((row, n) -> new SealedLeaf(row.getLong(1), Hash.of(row.getBytes(2))))
                .list();
    }

    /** Adds the leaves to the tree whose right edge is given, in the caller's transaction. */
    void add(Peaks peaks, List<SealedLeaf> leaves) {
        Rows rows = new Rows();
        long first = peaks.size();
        for (int i = 0; i < leaves.size(); i++) {
            SealedLeaf leaf = leaves.get(i);
            rows.add(0, first + i, leaf.entryId(), leaf.hash());
            peaks.add(leaf.hash(), (level, position, hash) -> {
                if (level > 0 && level % KEPT_LEVELS == 0) rows.add(level, position, 0, hash);
            });
        }
        rows.write();
    }

    /** Rows on their way to the database, in one statement a table. */
    private final class Rows {
        private final List<Long> positions = new ArrayList<>();
        private final List<Long> entries = new ArrayList<>();
        private final List<String> hashes = new ArrayList<>();
        private final List<Integer> levels = new ArrayList<>();

        void add(int level, long position, long entry, Hash hash) {
            levels.add(level);
            positions.add(position);
            entries.add(entry);
            hashes.add(hash.hex());
        }

        void write() {
            String rows =
                    "(select * from unnest(cast(:levels as int[]), cast(:positions as bigint[]), cast(:entries as bigint[]),"
                            + " cast(:hashes as text[])) as row (level, position, entry, hash)) rows";
            write("insert into stook.audit_leaf (position, entry_id, hash)"
                    + " select position, entry, decode(hash, 'hex') from " + rows + " where level = 0");
            write("insert into stook.audit_node (level, position, hash)"
                    + " select level, position, decode(hash, 'hex') from " + rows + " where level > 0");
        }

        private void write(String sql) {
            jdbc.sql(sql)
                    .param("levels", levels.toArray(Integer[]::new))
                    .param("positions", positions.toArray(Long[]::new))
                    .param("entries", entries.toArray(Long[]::new))
                    .param("hashes", hashes.toArray(String[]::new))
                    .update();
        }
    }
}
