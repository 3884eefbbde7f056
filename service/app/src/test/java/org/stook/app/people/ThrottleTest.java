package org.stook.app.people;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;
import org.junit.jupiter.api.Test;

class ThrottleTest {
    private final AtomicLong nanos = new AtomicLong();
    private final Throttle throttle = new Throttle(nanos::get);

    @Test
    void fiveFailuresMayBeMadeAndTheNextWaitsLongerAndLonger() {
        fail("ada", "10.0.0.1", 4);
        assertThat(throttle.pause("ada", "10.0.0.1")).isZero();
        assertThat(throttle.failed("ADA ", "10.0.0.1")).as("waits from now on").isTrue();
        assertThat(throttle.pause("ada", "10.0.0.1")).isEqualTo(Duration.ofSeconds(30));
        pass(Duration.ofSeconds(30));
        assertThat(throttle.pause("ada", "10.0.0.1")).isZero();
        fail("ada", "10.0.0.1", 1);
        assertThat(throttle.pause("ada", "10.0.0.1")).isEqualTo(Duration.ofSeconds(60));
        fail("ada", "10.0.0.1", 60);
        assertThat(throttle.pause("ada", "10.0.0.1")).isEqualTo(Duration.ofMinutes(15));
    }

    @Test
    void anotherAddressIsNotLockedOut() {
        fail("ada", "10.0.0.1", 20);
        assertThat(throttle.pause("ada", "10.0.0.2")).isZero();
    }

    @Test
    void anAddressThatTriesManyNamesHasToWait() {
        for (int i = 0; i < 30; i++) fail("name" + i, "10.0.0.1", 1);
        assertThat(throttle.pause("somebody", "10.0.0.1")).isPositive();
    }

    @Test
    void aNameTriedFromManyAddressesHasToWait() {
        for (int i = 0; i < 100; i++) fail("ada", "10.0.1." + i, 1);
        assertThat(throttle.pause("ada", "10.0.2.1")).isPositive();
        assertThat(throttle.pause("olga", "10.0.2.1")).isZero();
    }

    @Test
    void aSuccessAndAnHourForget() {
        fail("ada", "10.0.0.1", 5);
        throttle.succeeded("ada", "10.0.0.1");
        assertThat(throttle.pause("ada", "10.0.0.1")).isZero();
        fail("olga", "10.0.0.1", 5);
        pass(Duration.ofMinutes(61));
        fail("olga", "10.0.0.1", 1);
        assertThat(throttle.pause("olga", "10.0.0.1")).isZero();
    }

    private void fail(String name, String address, int times) {
        for (int i = 0; i < times; i++) throttle.failed(name, address);
    }

    private void pass(Duration time) {
        nanos.addAndGet(time.toNanos());
    }
}
