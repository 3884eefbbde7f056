package org.stook.app.intake;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.stereotype.Component;
import org.stook.imaging.codec.UnreadableFrame;

/**
 * Looks at frames that seem whole before they have settled, so that the word at the table need not wait for that. Nothing is
 * accepted by it: a file that changes afterwards is looked at anew, and one that has settled is read again from its beginning.
 * Kept in memory only.
 */
@Component
class EarlyLooks {
    private static final Logger LOG = LoggerFactory.getLogger(EarlyLooks.class);
    /** About 20 kB each. */
    private static final int MOST = 400;
    /** A camera at the table has no more files under way; a copied folder has, and is looked at once it is accepted. */
    private static final int UNDER_WAY = 12;

    /** A longer round begins no further look, nanoseconds. */
    private static final long ROUND = 150_000_000;

    /** What was seen of a whole frame. */
    record Glance(Finding.Whole whole, CaptureFacts facts, Look look) {}

    /** @param glance empty if it was no whole frame */
    private record Early(Sighting seen, Optional<Glance> glance) {}

    private final Map<Long, Early> looks = new LinkedHashMap<>();
    private boolean crowded;
    private boolean behind;
    private long begun;

    /** A round of one folder begins. @param underWay its files that are not decided yet */
    void begin(long underWay) {
        crowded = underWay > UNDER_WAY;
        behind = false;
        begun = System.nanoTime();
    }

    /** Looks at a file unless that was done; not for long in one round, so that other folders need not wait. @param clocks of the cameras */
    void look(FileRow row, Path file, Map<String, Duration> clocks) {
        if (isKnown(row)) {
            return;
        }
        behind = crowded || System.nanoTime() - begun > ROUND;
        if (!behind) {
            keep(row.id(), new Early(row.seen(), glance(row, file, clocks)));
        }
    }

    /** Whether a file of this round was left for the next. */
    boolean isBehind() {
        return behind;
    }

    private Optional<Glance> glance(FileRow row, Path file, Map<String, Duration> clocks) {
        try {
            if (Examination.of(file, row.seen()) instanceof Finding.Whole whole) {
                Look look = Look.at(file);
                CaptureFacts facts = CaptureFacts.of(whole.header().capture(), clocks);
                return Sighting.of(file).equals(row.seen())
                        ? Optional.of(new Glance(whole, facts, look))
                        : Optional.empty();
            }
        } catch (IOException | UnreadableFrame | RuntimeException e) {
            // Whoever looks at the accepted frame will say what is wrong with it.
            LOG.debug("{} cannot be looked at yet", file, e);
        }
        return Optional.empty();
    }

    private synchronized boolean isKnown(FileRow row) {
        Early early = looks.get(row.id());
        return early != null && early.seen().equals(row.seen());
    }

    private synchronized void keep(long file, Early early) {
        looks.remove(file);
        looks.put(file, early);
        if (looks.size() > MOST) {
            looks.remove(looks.keySet().iterator().next());
        }
    }

    /** What was seen of a file as it is now. */
    synchronized Optional<Glance> of(long file, Sighting seen) {
        return Optional.ofNullable(looks.get(file))
                .filter(early -> early.seen().equals(seen))
                .flatMap(Early::glance);
    }

    /** What was seen of an accepted file: the same bytes need no second look. */
    synchronized Optional<Look> of(long file, String sha256) {
        return Optional.ofNullable(looks.get(file))
                .flatMap(Early::glance)
                .filter(glance -> glance.whole().sha256().equals(sha256))
                .map(Glance::look);
    }
}
