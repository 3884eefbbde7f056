package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.orders.WorkOrder;

/**
 * The shares and whether they are there. A share is known by the file {@value WorkOrder.Share#SENTINEL} at its root: an empty mount point
 * looks like a folder whose files were all deleted, but it has no such file.
 */
@Component
class Shares {
    private static final String SENTINEL = WorkOrder.Share.SENTINEL;
    private static final Logger LOG = LoggerFactory.getLogger(Shares.class);

    /** @param root as this service mounts it */
    record Share(long id, String name, Path root, UUID sentinel) {}

    private final JdbcClient jdbc;

    Shares(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /**
     * The share of this name. Only when it is first set up is its sentinel written, or the one taken that lies there. In the
     * caller's transaction.
     */
    Share ensure(String name, String kind, Path root) {
        Optional<Share> known = find(name);
        if (known.isPresent()) {
            jdbc.sql("update stook.share set root = :root where id = :id and root <> :root")
                    .param("root", root.toString())
                    .param("id", known.get().id())
                    .update();
        } else {
            jdbc.sql("insert into stook.share (name, kind, root, sentinel) values (:name, :kind, :root, :sentinel)")
                    .param("name", name)
                    .param("kind", kind)
                    .param("root", root.toString())
                    .param("sentinel", setUp(root))
                    .update();
        }
        return find(name).orElseThrow();
    }

    /** The row of a station, its publications' share as configured now. In the caller's transaction. */
    long station(String name, long share, @Nullable Long publish) {
        return jdbc.sql("""
                        insert into stook.station (name, intake_share_id, intake_folder, publish_share_id)
                        values (:name, :share, '', :publish)
                        on conflict (name) do update set publish_share_id = excluded.publish_share_id
                        returning id""")
                .param("name", name)
                .param("share", share)
                .param("publish", publish, java.sql.Types.BIGINT)
                .query(Long.class)
                .single();
    }

    private Optional<Share> find(String name) {
        return jdbc.sql("select id, name, root, sentinel from stook.share where name = :name")
                .param("name", name)
                .query((row, n) -> new Share(
                        row.getLong(1), row.getString(2), Path.of(row.getString(3)), row.getObject(4, UUID.class)))
                .optional();
    }

    private static UUID setUp(Path root) {
        try {
            Files.createDirectories(root);
            Optional<UUID> lying = read(root.resolve(SENTINEL));
            if (lying.isPresent()) {
                return lying.get();
            }
            UUID fresh = UUID.randomUUID();
            Files.writeString(root.resolve(SENTINEL), fresh + "\n", StandardOpenOption.CREATE_NEW);
            return fresh;
        } catch (IOException e) {
            throw new IllegalStateException(
                    "cannot set up the share at %s: found %s, expected a folder that this service may write its mark %s to"
                            .formatted(root, e, SENTINEL),
                    e);
        }
    }

    /** Looks for the sentinel and notes a change of state. */
    boolean present(Share share) {
        String trouble = trouble(share);
        int changed = jdbc.sql("""
                        update stook.share set state = :state, state_text = :text, changed_at = now()
                        where id = :id and state in ('OK', 'GONE')
                          and (state <> :state or state_text is distinct from cast(:text as text))""")
                .param("state", trouble == null ? "OK" : "GONE")
                .param("text", trouble)
                .param("id", share.id())
                .update();
        if (changed == 1) {
            LOG.warn("share {}: {}", share.name(), trouble == null ? "is there" : trouble);
        }
        return trouble == null;
    }

    private static @Nullable String trouble(Share share) {
        Path file = share.root().resolve(SENTINEL);
        try {
            Optional<UUID> found = read(file);
            if (found.isEmpty()) {
                return "%s is not there, so the share counts as not mounted; nothing is taken for deleted, and the work goes on when it is back"
                        .formatted(file);
            }
            return found.get().equals(share.sentinel())
                    ? null
                    : "%s names another share: found %s, expected %s".formatted(file, found.get(), share.sentinel());
        } catch (IOException e) {
            return "%s cannot be read (%s), so the share counts as not mounted".formatted(file, e);
        }
    }

    private static Optional<UUID> read(Path file) throws IOException {
        if (!Files.exists(file)) {
            return Optional.empty();
        }
        List<String> lines = Files.readAllLines(file);
        try {
            return lines.isEmpty()
                    ? Optional.empty()
                    : Optional.of(UUID.fromString(lines.get(0).trim()));
        } catch (IllegalArgumentException e) {
            throw new IOException("its first line is no UUID", e);
        }
    }
}
