package org.stook.app.people;

import java.time.Duration;
import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import java.util.function.LongSupplier;
import org.springframework.stereotype.Component;

/**
 * Slows guessing down. After five failures of one name from one address, or thirty from one address, or a hundred of one
 * name from anywhere, further attempts wait: half a minute, doubled with each failure, up to a quarter of an hour. A success
 * clears what its name and address have to wait, and an hour without a failure clears all. So nobody else's guesses lock a
 * person out at once, as it is the address that has to wait first.
 */
@Component
public class Throttle {
    private static final int SAME_NAME_AND_ADDRESS = 5;
    private static final int SAME_ADDRESS = 30;
    private static final int SAME_NAME = 100;
    private static final long FIRST = Duration.ofSeconds(30).toNanos();
    private static final long LONGEST = Duration.ofMinutes(15).toNanos();
    private static final long FORGOTTEN = Duration.ofHours(1).toNanos();
    private static final int MOST_KEPT = 20_000;

    private record Failures(int count, long last) {}

    private final LongSupplier ticker;
    private final Map<String, Failures> failures = new LinkedHashMap<>() {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, Failures> eldest) {
            return size() > MOST_KEPT;
        }
    };

    /** @param ticker nanoseconds that only go forward */
    public Throttle(LongSupplier ticker) {
        this.ticker = ticker;
    }

    /** How long an attempt has to wait; zero: it may be made now. */
    public synchronized Duration pause(String name, String address) {
        long pause = Math.max(
                left(both(name, address), SAME_NAME_AND_ADDRESS),
                Math.max(left("address " + address, SAME_ADDRESS), left(alone(name), SAME_NAME)));
        return Duration.ofNanos(pause);
    }

    /** @return whether further attempts have to wait from now on */
    public synchronized boolean failed(String name, String address) {
        boolean free = pause(name, address).isZero();
        count(both(name, address));
        count("address " + address);
        count(alone(name));
        return free && !pause(name, address).isZero();
    }

    public synchronized void succeeded(String name, String address) {
        failures.remove(both(name, address));
    }

    private void count(String key) {
        long now = ticker.getAsLong();
        Failures before = failures.remove(key);
        int count = before == null || now - before.last() > FORGOTTEN ? 0 : before.count();
        failures.put(key, new Failures(count + 1, now));
    }

    private long left(String key, int free) {
        Failures so = failures.get(key);
        if (so == null || so.count() < free) {
            return 0;
        }
        long pause = Math.min(LONGEST, FIRST << Math.min(10, so.count() - free));
        return Math.max(0, pause - (ticker.getAsLong() - so.last()));
    }

    private static String both(String name, String address) {
        return "both " + address + " " + folded(name);
    }

    private static String alone(String name) {
        return "name " + folded(name);
    }

    private static String folded(String name) {
        String bare = name.strip().toLowerCase(Locale.ROOT);
        return bare.substring(0, Math.min(60, bare.length()));
    }
}
