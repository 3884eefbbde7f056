package org.stook.app.audit;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.stook.trail.Head;
import org.stook.trail.file.StampFiles;
import org.stook.trail.stamp.StampAuthority;

/**
 * Has the newest head stamped by an outside authority now and then, and lays the stamps beside the heads. Each head stands for all
 * entries before it, so a stamp an hour dates the whole trail to the hour. Without an authority nothing is done.
 */
@Component
public class Stamps {
    private static final Logger LOG = LoggerFactory.getLogger(Stamps.class);

    /** Makes a token of a head. */
    interface Authority {
        byte[] stamp(Head head) throws IOException;
    }

    private static final Authority NONE = head -> new byte[0];

    private final JdbcClient jdbc;
    private final Heads heads;
    private final HeadExport export;
    private final StampSettings settings;
    private final Authority authority;

    @Autowired
    Stamps(JdbcClient jdbc, Heads heads, HeadExport export, StampSettings settings) {
        this(jdbc, heads, export, settings, authority(settings.authority()));
    }

    Stamps(JdbcClient jdbc, Heads heads, HeadExport export, StampSettings settings, Authority authority) {
        this.jdbc = jdbc;
        this.heads = heads;
        this.export = export;
        this.settings = settings;
        this.authority = authority;
    }

    private static Authority authority(@Nullable URI address) {
        return address == null ? NONE : new StampAuthority(address)::stamp;
    }

    /** Has the newest head stamped if it is time, and brings every place up to date. */
    public void step() {
        if (settings.authority() == null) {
            return;
        }
        heads.newest().filter(this::isDue).ifPresent(this::stamp);
        for (HeadExport.Place place : export.places()) {
            if (place.trouble() == null) {
                layInto(new StampFiles(place.folder()), place.entries());
            }
        }
    }

    private boolean isDue(Head head) {
        return jdbc.sql("""
                        select not exists (select 1 from stook.audit_token
                          where tree_size = :size or got_at > now() - make_interval(secs => :every))""")
                .param("size", head.size())
                .param("every", settings.every().toSeconds())
                .query(Boolean.class)
                .single();
    }

    private void stamp(Head head) {
        try {
            jdbc.sql("insert into stook.audit_token (tree_size, token) values (:size, :token) on conflict do nothing")
                    .param("size", head.size())
                    .param("token", authority.stamp(head))
                    .update();
        } catch (IOException e) {
            LOG.warn(
                    "the head over {} entries has no time stamp; tried again with the next step: {}",
                    head.size(),
                    e.toString());
        }
    }

    private void layInto(StampFiles files, long upTo) {
        try {
            TreeSet<Long> there = files.sizes();
            jdbc
                    .sql("select tree_size, token from stook.audit_token where tree_size <= :size order by tree_size")
                    .param("size", upTo)
                    .query((row, n) -> new Token(row.getLong(1), row.getBytes(2)))
                    .list()
                    .stream()
                    .filter(token -> !there.contains(token.size()))
                    .forEach(token -> token.into(files));
        } catch (IOException | UncheckedIOException e) {
            LOG.warn(
                    "the time stamps cannot be laid beside the heads; tried again with the next step: {}",
                    e.toString());
        }
    }

    @SuppressWarnings("ArrayRecordComponent") // on its way from the database to a file
    private record Token(long size, byte[] bytes) {
        void into(StampFiles files) {
            try {
                files.add(size, bytes);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
