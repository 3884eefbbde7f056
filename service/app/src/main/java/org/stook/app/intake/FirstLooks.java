package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.stereotype.Component;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.imaging.codec.UnreadableFrame;
import org.stook.orders.Actor;

/**
 * Looks at the pictures of accepted frames, in the order in which they came. Apart from taking files in, so that a burst is
 * accepted as fast as it can be read, and looked at as fast as it can be decoded.
 */
@Component
public class FirstLooks {
    private static final Logger LOG = LoggerFactory.getLogger(FirstLooks.class);

    private record Unseen(long file, String sha256, Path path) {}

    private final JdbcClient jdbc;
    private final TransactionOperations transaction;
    private final EarlyLooks early;

    FirstLooks(JdbcClient jdbc, TransactionOperations transaction, EarlyLooks early) {
        this.jdbc = jdbc;
        this.transaction = transaction;
        this.early = early;
    }

    /** Looks at so many frames at most. @return how many it looked at */
    public int step(int most) {
        List<Unseen> unseen = unseen(most);
        unseen.forEach(this::look);
        return unseen.size();
    }

    private List<Unseen> unseen(int most) {
        return jdbc.sql("""
                        select f.id, f.sha256, s.root, f.rel_path from stook.frame fr
                        join stook.intake_file f on f.sha256 = fr.sha256 join stook.share s on s.id = f.share_id
                        where fr.survey is null and f.state = 'ACCEPTED' and f.role = 'FRAME' and f.missing_since is null
                          and s.state = 'OK' order by f.id limit :most""")
                .param("most", most)
                .query((row, n) -> new Unseen(
                        row.getLong(1),
                        row.getString(2),
                        Path.of(row.getString(3)).resolve(row.getString(4))))
                .list();
    }

    private void look(Unseen unseen) {
        try {
            Optional<Look> known = early.of(unseen.file(), unseen.sha256());
            String look = LookJson.write(known.isPresent() ? known.get() : Look.at(unseen.path()));
            jdbc.sql("update stook.frame set survey = cast(:look as jsonb) where sha256 = :sha256")
                    .param("look", look)
                    .param("sha256", unseen.sha256())
                    .update();
        } catch (UnreadableFrame e) {
            setAside(unseen, String.valueOf(e.getMessage()));
        } catch (IOException e) {
            // Gone since, or the share is: the poller will notice.
            LOG.warn("{} cannot be looked at and is tried again: {}", unseen.path(), e.toString());
        } catch (RuntimeException e) {
            // A fault of ours in one picture must not hold up the rest of the day.
            LOG.error("looking at {} failed", unseen.path(), e);
            setAside(unseen, unseen.path().getFileName() + ": could not be looked at (" + e + "); the log has more");
        }
    }

    private void setAside(Unseen unseen, String reason) {
        transaction.executeWithoutResult(t -> {
            Actor.acts(jdbc, "intake");
            jdbc.sql("update stook.intake_file set state = 'STRAY', reason_code = 'UNDECODABLE', reason = :reason"
                            + " where id = :id and state = 'ACCEPTED'")
                    .param("reason", reason)
                    .param("id", unseen.file())
                    .update();
        });
    }
}
