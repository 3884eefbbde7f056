package org.stook.app.stack;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** The word at the table: what the photographer has to know of the stacks just shot, while the subject is still mounted. */
@Component
public class TableWord {
    /** What is to be said of a stack. */
    public enum Mood {
        /** Its frames are arriving. */
        SHOOTING,
        /** The sweep is whole. */
        WHOLE,
        /** Something is missing. */
        MISSING,
        /** A person has to say something first. */
        ASKING,
        /** Nothing is known of its sweep. */
        UNKNOWN
    }

    /**
     * @param sentences what is missing or asked
     * @param frames of the sweep, as far as it is known
     * @param arriving files that are not read yet
     * @param open whether more frames may come; what is missing may still be shot then
     */
    public record Word(Stack stack, Mood mood, List<String> sentences, long frames, long arriving, boolean open) {
        public Word {
            sentences = List.copyOf(sentences);
        }
    }

    /** Which stack. */
    public record Stack(long id, String subject, @Nullable String view, int version) {}

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    /** More than a handful of the longest sweeps have. */
    private static final int NEWEST_FILES = 2000;

    private final JdbcClient jdbc;

    public TableWord(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of the station's newest stacks, the newest first: those of its newest files, and those without any yet. */
    public List<Word> latest(long station, int most) {
        return jdbc.sql("""
                        with lately as (
                          (select id from stook.stack where station_id = :station order by id desc limit :files / 100)
                          union
                          (select stack_id from (select stack_id from stook.intake_file where station_id = :station
                            order by id desc limit :files) f where stack_id is not null))
                        select s.id, s.subject, s.view_name, s.version, s.state, s.question, s.word::text, s.word_so_far::text, s.reason,
                          coalesce(max(f.last_change) > now() - interval '2 seconds', false),
                          count(f.id) filter (where f.state = 'ACCEPTED' and f.role = 'FRAME'),
                          count(f.id) filter (where f.state in ('SEEN', 'STABLE') or f.state = 'ACCEPTED' and fr.survey is null)
                        from lately l join stook.stack s on s.id = l.id
                        left join stook.intake_file f on f.stack_id = s.id and f.missing_since is null
                        left join stook.frame fr on fr.sha256 = f.sha256
                        where s.state <> 'ASIDE'
                        group by s.id order by max(f.id) desc nulls last, s.id desc limit :most""")
                .param("station", station)
                .param("files", NEWEST_FILES)
                .param("most", most)
                .query((row, n) -> word(
                        new Stack(row.getLong(1), row.getString(2), row.getString(3), row.getInt(4)),
                        new Facts(
                                row.getString(5).equals("COLLECTING"),
                                row.getString(6),
                                row.getString(7) == null ? row.getString(8) : row.getString(7),
                                row.getString(9),
                                row.getBoolean(10)),
                        row.getLong(11),
                        row.getLong(12)))
                .list();
    }

    /** @param busy whether a file came or changed just now */
    private record Facts(
            boolean open,
            @Nullable String question,
            @Nullable String word,
            @Nullable String reason,
            boolean busy) {}

    private static Word word(Stack stack, Facts facts, long frames, long arriving) {
        List<String> sentences = new ArrayList<>();
        if (facts.question() != null) sentences.add(facts.question());
        if (facts.open() && facts.reason() != null) sentences.add(facts.reason());
        boolean wanting = !sentences.isEmpty();
        JsonNode word = facts.word() == null ? MAPPER.nullNode() : MAPPER.readTree(facts.word());
        word.path("faults")
                .forEach(fault -> sentences.add(fault.path("sentence").stringValue("")));
        // Of a sweep that is being shot the word may be of frames that are not accepted yet.
        long judged = facts.open() ? Math.max(frames, word.path("frames").longValue(0)) : frames;
        return new Word(
                stack, mood(facts, word, wanting), sentences, judged, arriving - (judged - frames), facts.open());
    }

    private static Mood mood(Facts facts, JsonNode word, boolean wanting) {
        if (facts.question() != null) {
            return Mood.ASKING;
        }
        if (wanting) {
            return Mood.MISSING;
        }
        if (word.isNull()) {
            return facts.open() ? Mood.SHOOTING : Mood.UNKNOWN;
        }
        if (word.path("whole").booleanValue(false)) {
            return Mood.WHOLE;
        }
        return facts.open() && facts.busy() ? Mood.SHOOTING : Mood.MISSING;
    }
}
