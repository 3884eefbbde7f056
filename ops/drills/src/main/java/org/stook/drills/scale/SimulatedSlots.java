package org.stook.drills.scale;

import com.github.kagkarlsson.scheduler.Scheduler;
import com.zaxxer.hikari.HikariDataSource;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.random.RandomGenerator;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.stook.orders.DbClock;
import org.stook.orders.OrderBook;
import org.stook.orders.Workers;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.PublishedResult;
import org.stook.orders.attempt.RunTask;
import org.stook.orders.attempt.StagedResult;

/**
 * Worker slots without a process each: the queue, the claims, the fence and the heartbeats are the true ones, only the work is
 * a pause. They share a few connections, which makes them slower than true ones, not quicker.
 */
final class SimulatedSlots implements AutoCloseable {
    private static final String HASH = "ef".repeat(32);

    private final HikariDataSource source;
    private final List<Scheduler> schedulers = new ArrayList<>();
    private final Map<String, Long> freeSince = new ConcurrentHashMap<>();
    private final ConcurrentLinkedQueue<Double> idle = new ConcurrentLinkedQueue<>();
    private final ConcurrentLinkedQueue<Long> order = new ConcurrentLinkedQueue<>();
    private final AtomicInteger done = new AtomicInteger();

    /** @param workMillis how long a run takes, half to one and a half times as much by chance */
    SimulatedSlots(HikariDataSource source, int slots, int workMillis, RandomGenerator random) {
        this.source = source;
        for (int i = 0; i < slots; i++) {
            String id = "sim-" + i;
            new Workers(source).announce(new Workers.Announcement(id, "simulated", 1, "0", 1, 99, 1L << 40));
            RandomGenerator own = new java.util.SplittableRandom(random.nextLong());
            RunTask task = new RunTask(source, new DataSourceTransactionManager(source), id, "0");
            schedulers.add(OrderBook.worker(
                            source, new DbClock(source), id, task.with(attempt -> work(id, attempt, workMillis, own)))
                    .build());
        }
    }

    void start() {
        schedulers.forEach(Scheduler::start);
    }

    private Outcome work(String id, Attempt attempt, int workMillis, RandomGenerator random) {
        Long free = freeSince.remove(id);
        if (free != null) {
            idle.add((System.nanoTime() - free) / 1e9);
        }
        long run = attempt.order().run().value();
        order.add(run);
        try {
            TimeUnit.MILLISECONDS.sleep(workMillis / 2 + random.nextInt(workMillis));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        attempt.publishing(new StagedResult("s/" + run, "f/" + run, HASH));
        attempt.published(new PublishedResult(1, "[]", null, null));
        done.incrementAndGet();
        freeSince.put(id, System.nanoTime());
        return new Outcome.Published();
    }

    /** Seconds that a slot stood free with work waiting, from one run's publication to the next one's first step. */
    double[] idle() {
        return idle.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    /** Runs in the order in which they were begun. */
    List<Long> order() {
        return List.copyOf(order);
    }

    int done() {
        return done.get();
    }

    @Override
    public void close() {
        schedulers.parallelStream().forEach(Scheduler::stop);
        source.close();
    }
}
