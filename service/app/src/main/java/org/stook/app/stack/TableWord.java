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
     */
    public record Word(Stack stack, Mood mood, List<String> sentences, long frames, long arriving) {
        public Word {
            sentences = List.copyOf(sentences);
        }
    }

    /** Which stack. */
    public record Stack(long id, String subject, @Nullable String view, int version) {}

    private static final JsonMapper MAPPER = JsonMapper.builder().build();

    private final JdbcClient jdbc;

    public TableWord(JdbcClient jdbc) {
        this.jdbc = jdbc;
    }

    /** Of the station's newest stacks, the newest first. */
    public List<Word> latest(long station, int most) {
        return jdbc.sql("""
                        select s.id, s.subject, s.view_name, s.version, s.state, s.question, s.word::text, s.reason,
                          count(f.id) filter (where f.state = 'ACCEPTED' and f.role = 'FRAME'),
                          count(f.id) filter (where f.state in ('SEEN', 'STABLE') or f.state = 'ACCEPTED' and fr.survey is null)
                        from stook.stack s left join stook.intake_file f on f.stack_id = s.id and f.missing_since is null
                        left join stook.frame fr on fr.sha256 = f.sha256
                        where s.station_id = :station and s.state <> 'ASIDE'
                        group by s.id order by max(f.id) desc nulls last, s.id desc limit :most""")
                .param("station", station)
                .param("most", most)
                .query((row, n) -> word(
                        new Stack(row.getLong(1), row.getString(2), row.getString(3), row.getInt(4)),
                        new Facts(row.getString(5), row.getString(6), row.getString(7), row.getString(8)),
                        row.getLong(9),
                        row.getLong(10)))
                .list();
    }

    private record Facts(
            String state,
            @Nullable String question,
            @Nullable String word,
            @Nullable String reason) {}

    private static Word word(Stack stack, Facts facts, long frames, long arriving) {
        List<String> sentences = new ArrayList<>();
        if (facts.question() != null) {
            sentences.add(facts.question());
            return new Word(stack, Mood.ASKING, sentences, frames, arriving);
        }
        if (facts.state().equals("COLLECTING")) {
            if (facts.reason() != null) {
                sentences.add(facts.reason());
            }
            return new Word(stack, facts.reason() == null ? Mood.SHOOTING : Mood.MISSING, sentences, frames, arriving);
        }
        if (facts.word() == null) {
            return new Word(stack, Mood.UNKNOWN, sentences, frames, arriving);
        }
        JsonNode word = MAPPER.readTree(facts.word());
        word.path("faults")
                .forEach(fault -> sentences.add(fault.path("sentence").stringValue("")));
        return new Word(
                stack, word.path("whole").booleanValue(false) ? Mood.WHOLE : Mood.MISSING, sentences, frames, arriving);
    }
}
