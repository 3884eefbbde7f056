package org.stook.app.stack;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;

/** Finds what a word may mean: a subject, a station, tone settings, a frame by its name, or anything by its hash. */
@Component
public class Search {
    /** Of each kind. */
    public static final int MOST = 50;

    /** A hash is asked for by at least so much of it. */
    private static final Pattern HASH = Pattern.compile("[0-9a-f]{6,64}");

    private static final Pattern NUMBER = Pattern.compile("[0-9]{1,18}");

    public record Found(
            List<StackHit> stacks,
            List<FrameHit> frames,
            List<PublicationHit> publications,
            List<String> stations,
            List<String> tones) {
        public boolean nothing() {
            return stacks.isEmpty()
                    && frames.isEmpty()
                    && publications.isEmpty()
                    && stations.isEmpty()
                    && tones.isEmpty();
        }
    }

    public record StackHit(
            long id, String subject, @Nullable String view, String station, String state, Instant at) {}

    /** @param stackId 0 for a file that belongs to no stack yet */
    public record FrameHit(long stackId, @Nullable String subject, String station, String file, String state) {}

    public record PublicationHit(long runId, long stackId, String subject, String name, String sha256) {}

    private final JdbcClient jdbc;

    Search(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** @param text part of a subject or of a station's name, beginning of a frame's name, beginning of a hash, number of a stack */
    public Found find(String text) {
        String word = text.strip().toLowerCase(Locale.ROOT);
        boolean hash = HASH.matcher(word).matches();
        return new Found(
                stacks(word, hash),
                frames(word, hash),
                hash ? publications(word) : List.of(),
                stations(word),
                tones(word, hash));
    }

    private List<StackHit> stacks(String word, boolean hash) {
        return jdbc.sql("""
                        select s.id, s.subject, s.view_name, t.name, s.state, s.created_at from stook.stack s
                        join stook.station t on t.id = s.station_id
                        where position(:word in lower(s.subject || ' ' || coalesce(s.view_name, ''))) > 0 or s.id = :number
                          or (:hash and s.manifest_sha256 >= :word and s.manifest_sha256 < :word || 'g')
                        order by s.id = :number desc, s.id desc limit :most""")
                .param("word", word)
                .param("number", NUMBER.matcher(word).matches() ? Long.parseLong(word) : 0)
                .param("hash", hash)
                .param("most", MOST)
                .query((row, n) -> new StackHit(
                        row.getLong(1),
                        row.getString(2),
                        row.getString(3),
                        row.getString(4),
                        row.getString(5),
                        row.getObject(6, OffsetDateTime.class).toInstant()))
                .list();
    }

    /** By the beginning of the name, which has an index: there are millions of frames. */
    private List<FrameHit> frames(String word, boolean hash) {
        return jdbc.sql("""
                        select coalesce(s.id, 0), s.subject, t.name, f.rel_path, f.state from stook.intake_file f
                        join stook.station t on t.id = f.station_id left join stook.stack s on s.id = f.stack_id
                        where stook.file_name(f.rel_path) like :start
                          or (:hash and f.sha256 >= :word and f.sha256 < :word || 'g')
                        order by f.id desc limit :most""")
                .param("start", word.replaceAll("([\\\\%_])", "\\\\$1") + "%")
                .param("hash", hash)
                .param("word", word)
                .param("most", MOST)
                .query((row, n) -> new FrameHit(
                        row.getLong(1), row.getString(2), row.getString(3), row.getString(4), row.getString(5)))
                .list();
    }

    private List<PublicationHit> publications(String hash) {
        return jdbc.sql("""
                        select p.run_id, p.stack_id, s.subject, p.name, p.sha256 from stook.publication p
                        join stook.stack s on s.id = p.stack_id
                        where p.sha256 >= :hash and p.sha256 < :hash || 'g' order by p.run_id desc limit :most""")
                .param("hash", hash)
                .param("most", MOST)
                .query((row, n) -> new PublicationHit(
                        row.getLong(1), row.getLong(2), row.getString(3), row.getString(4), row.getString(5)))
                .list();
    }

    private List<String> stations(String word) {
        return jdbc.sql(
                        "select name from stook.station where active and position(:word in lower(name)) > 0 order by name")
                .param("word", word)
                .query(String.class)
                .list();
    }

    private List<String> tones(String word, boolean hash) {
        return jdbc.sql("select id from stook.tone_settings where :hash and id >= :word and id < :word || 'g'"
                        + " order by id limit :most")
                .param("hash", hash)
                .param("word", word)
                .param("most", MOST)
                .query(String.class)
                .list();
    }
}
