package org.stook.orders;

import com.github.kagkarlsson.scheduler.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.LongSupplier;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;

/**
 * The database's time, the same on all nodes. Heartbeats are compared between machines: with their own clocks a skew of a
 * minute made living attempts look dead.
 *
 * <p>The database is asked now and then, in between the machine's monotonic counter is added. Never goes backwards. While
 * the database does not answer, the last answer is carried on.
 */
public final class DbClock implements Clock {
    private static final Logger LOG = LoggerFactory.getLogger(DbClock.class);
    private static final Duration REFRESH = Duration.ofSeconds(30);

    private record Anchor(Instant time, long nanos) {}

    private final Supplier<Instant> database;
    private final LongSupplier nanos;
    private final ReentrantLock refreshing = new ReentrantLock();
    private volatile @Nullable Anchor anchor;
    private Instant latest = Instant.MIN;

    public DbClock(DataSource source) {
        this(asking(JdbcClient.create(source)), System::nanoTime);
    }

    DbClock(Supplier<Instant> database, LongSupplier nanos) {
        this.database = database;
        this.nanos = nanos;
    }

    /** @throws DataAccessException only if the database never answered yet */
    @Override
    public Instant now() {
        Anchor known = anchor;
        if (known == null || nanos.getAsLong() - known.nanos() > REFRESH.toNanos()) {
            refresh(known);
        }
        return notBackwards();
    }

    private synchronized Instant notBackwards() {
        Anchor known = anchor;
        if (known == null) {
            throw new IllegalStateException("the database's clock was never read");
        }
        Instant time = known.time().plusNanos(nanos.getAsLong() - known.nanos());
        latest = time.isAfter(latest) ? time : latest;
        return latest;
    }

    private void refresh(@Nullable Anchor known) {
        if (known == null) {
            refreshing.lock(); // The first answer has to be waited for.
        } else if (!refreshing.tryLock()) {
            return; // Somebody is asking; the old answer is good enough.
        }
        try {
            if (anchor == known) {
                anchor = ask();
            }
        } catch (DataAccessException e) {
            if (known == null) {
                throw e;
            }
            LOG.debug("the database does not tell the time; going on from its last answer", e);
            anchor = new Anchor(known.time().plusNanos(nanos.getAsLong() - known.nanos()), nanos.getAsLong());
        } finally {
            refreshing.unlock();
        }
    }

    private Anchor ask() {
        long before = nanos.getAsLong();
        Instant time = database.get();
        long after = nanos.getAsLong();
        return new Anchor(time, before + (after - before) / 2);
    }

    private static Supplier<Instant> asking(JdbcClient jdbc) {
        return () -> jdbc.sql("select clock_timestamp()")
                .query((row, n) -> row.getObject(1, java.time.OffsetDateTime.class))
                .single()
                .toInstant();
    }
}
