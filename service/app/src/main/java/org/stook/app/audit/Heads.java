package org.stook.app.audit;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Optional;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.trail.Head;
import org.stook.trail.merkle.Hash;

/** The heads in the database. */
@Component
public class Heads {
    private static final String SELECT =
            "select tree_size, root, prev_root, sealed_at, key_id, signature from stook.audit_seal ";

    private final JdbcClient jdbc;

    public Heads(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    public Optional<Head> newest() {
        return jdbc.sql(SELECT + "order by tree_size desc limit 1")
                .query((row, n) -> read(row))
                .optional();
    }

    public Optional<Head> ofSize(long size) {
        return jdbc.sql(SELECT + "where tree_size = :size")
                .param("size", size)
                .query((row, n) -> read(row))
                .optional();
    }

    /** Those over more than {@code size} entries, oldest first. */
    List<Head> after(long size, int limit) {
        return jdbc.sql(SELECT + "where tree_size > :size order by tree_size limit :limit")
                .param("size", size)
                .param("limit", limit)
                .query((row, n) -> read(row))
                .list();
    }

    /** Now, by the clock that entries are dated with. */
    Instant now() {
        return jdbc.sql("select clock_timestamp()")
                .query(OffsetDateTime.class)
                .single()
                .toInstant();
    }

    void add(Head head) {
        Head.Signature signature = head.signature();
        jdbc.sql("insert into stook.audit_seal (tree_size, root, prev_root, sealed_at, key_id, signature)"
                        + " values (:size, :root, :previous, :at, :key, :signature)")
                .param("size", head.size())
                .param("root", head.root().hex())
                .param("previous", head.previous().hex())
                .param("at", head.at().atOffset(ZoneOffset.UTC))
                .param("key", signature == null ? null : signature.key())
                .param("signature", signature == null ? null : signature.base64())
                .update();
    }

    private static Head read(ResultSet row) throws SQLException {
        String signature = row.getString(6);
        return new Head(
                row.getLong(1),
                Hash.ofHex(row.getString(2)),
                Hash.ofHex(row.getString(3)),
                row.getObject(4, OffsetDateTime.class).toInstant(),
                signature == null ? null : new Head.Signature(row.getString(5), signature));
    }
}
