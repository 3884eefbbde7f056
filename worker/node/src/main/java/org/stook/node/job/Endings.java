package org.stook.node.job;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.transaction.TransactionException;
import org.stook.imaging.composite.CannotCompose;
import org.stook.node.publish.Shares;
import org.stook.node.publish.Shares.Trouble;
import org.stook.orders.WorkOrder;
import org.stook.orders.attempt.Outcome;

/** What an exception means for a run: whose fault it is, and whether it is worth another try. */
final class Endings {
    private static final Logger LOG = LoggerFactory.getLogger(Endings.class);
    /** By then the process has paused itself, if it still is as it was. */
    private static final Duration SHARE_AGAIN = Duration.ofSeconds(10);

    private static final Duration SPACE_AGAIN = Duration.ofMinutes(1);
    private static final Duration DATABASE_AGAIN = Duration.ofSeconds(15);
    /** The words of ENOSPC and EDQUOT, which come through as text only. */
    private static final Pattern FULL =
            Pattern.compile("No space left on device|quota exceeded", Pattern.CASE_INSENSITIVE);
    /** Those of EROFS, ESTALE, EHOSTDOWN, ENOTCONN and ENODEV: the file system is away or closed, whoever asks. */
    private static final Pattern AWAY = Pattern.compile(
            "Read-only file system|Stale file handle|Host is down|not connected|No such device",
            Pattern.CASE_INSENSITIVE);

    private final Shares shares;

    Endings(Shares shares) {
        this.shares = shares;
    }

    Outcome of(WorkOrder order, Throwable thrown) {
        Throwable cause =
                thrown instanceof UncheckedIOException && thrown.getCause() != null ? thrown.getCause() : thrown;
        if (cause instanceof Ended ended) {
            return ended.outcome();
        } else if (cause instanceof CannotCompose cannot) {
            return new Outcome.Failed(cannot.code().toUpperCase(Locale.ROOT).replace('-', '_'), cannot.getMessage());
        } else if (cause instanceof IOException io) {
            return ofFiles(order, io);
        } else if (cause instanceof DataAccessException || cause instanceof TransactionException) {
            return new Outcome.HandedBack("DATABASE", "the database was away: " + cause.getMessage(), DATABASE_AGAIN);
        }
        LOG.error("run {}, attempt {} broke", order.run(), order.attempt(), cause);
        return new Outcome.Transient("UNEXPECTED", cause.toString());
    }

    static Outcome handedBack(Trouble trouble) {
        return new Outcome.HandedBack(trouble.code(), trouble.sentence(), SHARE_AGAIN);
    }

    private Outcome ofFiles(WorkOrder order, IOException e) {
        Optional<Trouble> trouble = shares.trouble(order);
        if (trouble.isPresent()) {
            return handedBack(trouble.get());
        }
        String words = String.valueOf(e.getMessage());
        if (FULL.matcher(words).find()) {
            return new Outcome.HandedBack("DISK_FULL", e.toString(), SPACE_AGAIN);
        }
        if (AWAY.matcher(words).find()) {
            return new Outcome.HandedBack("SHARE_GONE", e.toString(), SHARE_AGAIN);
        }
        LOG.warn("run {}, attempt {}", order.run(), order.attempt(), e);
        return new Outcome.Transient("IO", e.toString());
    }
}
