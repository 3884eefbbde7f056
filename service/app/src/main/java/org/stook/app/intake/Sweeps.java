package org.stook.app.intake;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.imaging.survey.FrameSurvey;
import org.stook.imaging.survey.Stray;
import org.stook.imaging.survey.SweepSurvey;
import org.stook.orders.Actor;

/** Judges the sweep of a stack by its frames' surveys: which frames stray, and whether the sweep is whole. */
@Component
class Sweeps {
    private static final Logger LOG = LoggerFactory.getLogger(Sweeps.class);

    private record Frame(
            long file, String name, boolean kept, @Nullable String look) {}

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;

    Sweeps(JdbcClient jdbc, TransactionOperations transaction) {
        this.jdbc = jdbc;
        this.transaction = transaction;
    }

    /** Sets strays of a collecting stack aside and writes its word. */
    void judge(long stack) {
        List<Frame> frames = frames(stack);
        if (frames.isEmpty()) {
            return;
        }
        List<FrameSurvey> surveys = frames.stream()
                .map(frame -> LookJson.read(String.valueOf(frame.look())).survey())
                .toList();
        try {
            write(stack, frames, SweepSurvey.of(surveys));
        } catch (RuntimeException e) {
            // The worker surveys again; without a word the stack goes on.
            LOG.error("the sweep of stack {} could not be judged", stack, e);
        }
    }

    private void write(long stack, List<Frame> frames, SweepSurvey sweep) {
        List<String> names = frames.stream().map(Frame::name).toList();
        SweepWord word = SweepWord.of(sweep, names);
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "intake");
            sweep.strays().stream()
                    // Sealing tells sizes apart, and by their very pixels.
                    .filter(s -> s.reason() != Stray.Reason.OTHER_SIZE
                            && !frames.get(s.frame()).kept())
                    .forEach(s -> setAside(frames, s));
            jdbc.sql("update stook.stack set word = cast(:word as jsonb) where id = :stack")
                    .param("word", word.json())
                    .param("stack", stack)
                    .update();
        });
    }

    private void setAside(List<Frame> frames, Stray stray) {
        Frame frame = frames.get(stray.frame());
        String twin = stray.twin().isPresent()
                ? " " + frames.get(stray.twin().getAsInt()).name()
                : "";
        jdbc.sql("update stook.intake_file set state = 'STRAY', reason_code = :code, reason = :reason"
                        + " where id = :id and state = 'ACCEPTED'")
                .param("code", stray.reason().name())
                .param("reason", frame.name() + ": " + stray.sentence() + twin)
                .param("id", frame.file())
                .update();
    }

    /** In order of capture. */
    private List<Frame> frames(long stack) {
        return jdbc.sql("""
                        select f.id, regexp_replace(f.rel_path, '^.*/', ''), f.kept, fr.survey::text from stook.intake_file f
                        join stook.frame fr on fr.sha256 = f.sha256
                        where f.stack_id = :stack and f.state = 'ACCEPTED' and f.role = 'FRAME' and f.missing_since is null
                          and fr.survey is not null
                        order by fr.captured_at nulls last, f.rel_path""")
                .param("stack", stack)
                .query((row, n) -> new Frame(row.getLong(1), row.getString(2), row.getBoolean(3), row.getString(4)))
                .list();
    }
}
