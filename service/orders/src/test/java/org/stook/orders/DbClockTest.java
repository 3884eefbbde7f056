package org.stook.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.concurrent.atomic.AtomicLong;
import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;
import org.springframework.dao.DataAccessResourceFailureException;

class DbClockTest {
    private static final Instant NOON = Instant.parse("2026-11-25T12:00:00Z");

    private final AtomicReference<Instant> database = new AtomicReference<>(NOON);
    private final AtomicLong nanos = new AtomicLong(5);
    private boolean down;
    private int asked;

    private final DbClock clock = new DbClock(
            () -> {
                asked++;
                if (down) {
                    throw new DataAccessResourceFailureException("down");
                }
                return database.get();
            },
            nanos::get);

    @Test
    void followsTheDatabaseWhateverThisMachineThinks() {
        // The machine's own time of day is no input at all: only the monotonic counter is.
        assertThat(clock.now()).isEqualTo(NOON);
        pass(Duration.ofSeconds(10));
        assertThat(clock.now()).isEqualTo(NOON.plusSeconds(10));
        assertThat(asked).isEqualTo(1);
    }

    @Test
    void asksAgainNowAndThen() {
        clock.now();
        pass(Duration.ofSeconds(31));
        database.set(NOON.plusSeconds(33));
        assertThat(clock.now()).isEqualTo(NOON.plusSeconds(33));
        assertThat(asked).isEqualTo(2);
    }

    @Test
    void neverGoesBackwards() {
        clock.now();
        pass(Duration.ofSeconds(31));
        database.set(NOON.minusSeconds(60));
        assertThat(clock.now()).isEqualTo(NOON);
        pass(Duration.ofSeconds(20));
        assertThat(clock.now()).isEqualTo(NOON);
    }

    @Test
    void goesOnWhileTheDatabaseIsAway() {
        clock.now();
        down = true;
        pass(Duration.ofMinutes(5));
        assertThat(clock.now()).isEqualTo(NOON.plus(Duration.ofMinutes(5)));
    }

    @Test
    void cannotStartWithoutTheDatabase() {
        down = true;
        assertThatThrownBy(clock::now).isInstanceOf(DataAccessResourceFailureException.class);
        down = false;
        assertThat(clock.now()).isEqualTo(NOON);
    }

    @Test
    void readsARealDatabase() {
        Studio studio = new Studio(DbClockTest.class);
        Instant asked = new DbClock(studio.source).now();
        // Database and test share this machine's clock.
        assertThat(asked).isCloseTo(Instant.now(), within(2, ChronoUnit.SECONDS));
    }

    private void pass(Duration time) {
        nanos.addAndGet(time.toNanos());
    }
}
