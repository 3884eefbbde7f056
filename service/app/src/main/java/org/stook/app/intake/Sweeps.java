package org.stook.app.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.imaging.survey.BorderDetail;
import org.stook.imaging.survey.FrameSurvey;
import org.stook.imaging.survey.Framing;
import org.stook.imaging.survey.Stray;
import org.stook.imaging.survey.SweepSurvey;
import org.stook.orders.Actor;

/** Judges the sweep of a stack by its frames' surveys: which frames stray, and whether the sweep is whole. */
@Component
class Sweeps {
    private static final Logger LOG = LoggerFactory.getLogger(Sweeps.class);

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final SweepFrames frames;
    /** Of a stack that is being shot: by its frames what was found of them last. */
    private record Judged(List<String> contents, Optional<SweepSurvey> sweep) {}

    private final Map<Long, Judged> judged = new HashMap<>();

    Sweeps(JdbcClient jdbc, TransactionOperations transaction, SweepFrames frames) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.frames = frames;
    }

    /** Sets strays of a collecting stack aside and writes its word. */
    void judge(long stack) {
        List<SweepFrames.Frame> accepted = frames.accepted(stack);
        Judged known = judged.remove(stack);
        Optional<SweepSurvey> found =
                known != null && known.contents().equals(contents(accepted)) ? known.sweep() : survey(stack, accepted);
        found.ifPresent(sweep -> write(stack, accepted, sweep));
    }

    /** Writes the word of a collecting stack as far as its frames were looked at, unless they are the same as before. */
    void soFar(long stack) {
        List<SweepFrames.Frame> seen = frames.seen(stack);
        List<String> contents = contents(seen);
        Judged known = judged.get(stack);
        if (seen.size() < SweepWord.FEWEST || known != null && known.contents().equals(contents)) {
            return;
        }
        Optional<SweepSurvey> sweep = survey(stack, seen);
        judged.put(stack, new Judged(contents, sweep));
        Optional<String> word = sweep.map(found -> word(seen, found).json());
        jdbc.sql("""
                        update stook.stack set word_so_far = cast(:word as jsonb)
                        where id = :stack and state = 'COLLECTING' and word_so_far is distinct from cast(:word as jsonb)""")
                .param("word", word.orElse(null), java.sql.Types.VARCHAR)
                .param("stack", stack)
                .update();
    }

    private static List<String> contents(List<SweepFrames.Frame> frames) {
        return frames.stream().map(SweepFrames.Frame::sha256).toList();
    }

    private static Optional<SweepSurvey> survey(long stack, List<SweepFrames.Frame> frames) {
        List<FrameSurvey> surveys = surveys(frames);
        try {
            return surveys.isEmpty() ? Optional.empty() : Optional.of(SweepSurvey.of(surveys));
        } catch (RuntimeException e) {
            // The worker surveys again; without a word the stack goes on.
            LOG.error("the sweep of stack {} could not be judged", stack, e);
            return Optional.empty();
        }
    }

    private static List<FrameSurvey> surveys(List<SweepFrames.Frame> frames) {
        return frames.stream().map(frame -> frame.look().survey()).toList();
    }

    private static SweepWord word(List<SweepFrames.Frame> frames, SweepSurvey sweep) {
        List<BorderDetail> borders =
                frames.stream().map(frame -> frame.look().border()).toList();
        return SweepWord.of(
                sweep,
                Framing.of(surveys(frames), borders, sweep),
                frames.stream().map(SweepFrames.Frame::name).toList());
    }

    private void write(long stack, List<SweepFrames.Frame> frames, SweepSurvey sweep) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "intake");
            sweep.strays().stream()
                    // Sealing tells sizes apart, and by their very pixels.
                    .filter(s -> s.reason() != Stray.Reason.OTHER_SIZE
                            && !frames.get(s.frame()).kept())
                    .forEach(s -> setAside(frames, s));
            jdbc.sql("update stook.stack set word = cast(:word as jsonb), word_so_far = null where id = :stack")
                    .param("word", word(frames, sweep).json())
                    .param("stack", stack)
                    .update();
        });
    }

    private void setAside(List<SweepFrames.Frame> frames, Stray stray) {
        SweepFrames.Frame frame = frames.get(stray.frame());
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
}
