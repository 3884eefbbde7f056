package org.stook.app.audit;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import java.util.stream.LongStream;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.orders.WorkOrder;
import org.stook.trail.Head;
import org.stook.trail.HeadKey;
import org.stook.trail.SealedLeaf;
import org.stook.trail.file.HeadFolder;

/**
 * Lays every head, and the hash of every leaf, beside the publications and in the places set: out of reach of whoever owns the
 * database. A place that was away gets what it missed. A place that knows a head which the database does not have gets
 * nothing more, for then the database is not the one that the head was made of.
 */
@Component
public class HeadExport {
    private static final Logger LOG = LoggerFactory.getLogger(HeadExport.class);
    private static final int AT_ONCE = 10_000;

    /**
     * One place as it was found last.
     *
     * @param entries under the newest head that lies there
     * @param trouble null if all is well
     */
    public record Place(Path folder, long entries, @Nullable String trouble) {}

    private final JdbcClient jdbc;
    private final TreeStore tree;
    private final Heads heads;
    private final AuditSettings settings;
    private final @Nullable HeadKey key;
    private volatile List<Place> places = List.of();

    HeadExport(JdbcClient jdbc, TreeStore tree, Heads heads, AuditSettings settings, Sealer sealer) {
        this.jdbc = jdbc;
        this.tree = tree;
        this.heads = heads;
        this.settings = settings;
        this.key = sealer.key();
    }

    /** As the last step found them. */
    public List<Place> places() {
        return places;
    }

    /** Brings every place up to the newest head. */
    public void step() {
        Optional<Head> newest = heads.newest();
        if (newest.isEmpty()) {
            return;
        }
        List<Place> found = new ArrayList<>();
        Stream.concat(besidePublications(), settings.places().stream())
                .distinct()
                .forEach(folder -> found.add(bring(folder, newest.get())));
        places = List.copyOf(found);
    }

    /** Shares that publications go to and that are there. */
    private Stream<Path> besidePublications() {
        record Share(Path root, String sentinel) {}
        return jdbc.sql("""
                        select root, sentinel::text from stook.share
                        where kind = 'PUBLISH' or id in (select share_id from stook.publication) order by id""").query((row, n) -> new Share(Path.of(row.getString(1)), row.getString(2))).list().stream()
                .filter(share -> isThere(share.root(), share.sentinel()))
                .map(share -> share.root().resolve(HeadFolder.NAME));
    }

    private static boolean isThere(Path root, String sentinel) {
        try {
            return Files.readString(root.resolve(WorkOrder.Share.SENTINEL))
                    .trim()
                    .equals(sentinel);
        } catch (IOException e) {
            return false;
        }
    }

    private Place bring(Path folder, Head newest) {
        HeadFolder place = new HeadFolder(folder);
        try {
            String trouble = disagreement(place);
            if (trouble == null) {
                add(place, newest);
                return new Place(folder, newest.size(), null);
            }
            LOG.error("{}: {}", folder, trouble);
            return new Place(folder, place.lastHead().map(Head::size).orElse(0L), trouble);
        } catch (IOException | IllegalArgumentException e) {
            LOG.warn(
                    "the audit trail's heads cannot be laid into {}; tried again with the next: {}",
                    folder,
                    e.toString());
            return new Place(folder, 0, e.toString());
        }
    }

    /** What the place knows that the database does not, or null. */
    private @Nullable String disagreement(HeadFolder place) throws IOException {
        Optional<Head> last = place.lastHead();
        if (last.isPresent()) {
            Head there = last.get();
            Optional<Head> here = heads.ofSize(there.size());
            if (here.isEmpty() || !here.get().root().equals(there.root())) {
                return ("the head over %d entries of %s lies there, but the database %s; it is another one, or was set back."
                                + " Nothing more is laid there; compare with verify")
                        .formatted(
                                there.size(),
                                there.at(),
                                here.isEmpty() ? "has none of that size" : "has another root for it");
            }
        }
        long leaves = place.leafCount();
        if (leaves > 0) {
            List<SealedLeaf> here = tree.leaves(leaves - 1, 1);
            if (here.isEmpty() || !here.get(0).equals(place.leaf(leaves - 1))) {
                return "leaf %d lies there, but the database has another; compare with verify".formatted(leaves - 1);
            }
        }
        return null;
    }

    private void add(HeadFolder place, Head newest) throws IOException {
        if (key != null) {
            place.addKey(key.publicKey());
        }
        long known = place.leafCount();
        if (known < newest.size()) {
            place.addLeaves(leaves(known, newest.size()));
        }
        long last = place.lastHead().map(Head::size).orElse(0L);
        while (last < newest.size()) {
            List<Head> more = heads.after(last, AT_ONCE);
            place.addHeads(more);
            last = more.get(more.size() - 1).size();
        }
    }

    private Iterator<SealedLeaf> leaves(long from, long end) {
        return LongStream.iterate(from, at -> at < end, at -> at + AT_ONCE)
                .boxed()
                .flatMap(at -> tree.leaves(at, Math.min(AT_ONCE, end - at)).stream())
                .iterator();
    }
}
