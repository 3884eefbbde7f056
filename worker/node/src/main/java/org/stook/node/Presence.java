package org.stook.node;

import com.github.kagkarlsson.scheduler.Scheduler;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import org.springframework.context.SmartLifecycle;
import org.springframework.dao.DataAccessException;
import org.springframework.scheduling.annotation.Scheduled;
import org.stook.migrations.Schema;
import org.stook.orders.Workers;
import org.stook.orders.Workers.State;

/**
 * The process among the workers: announces itself, claims as long as it can work, says every few seconds that it lives, and
 * takes its leave. While something is wrong with this machine it pauses, so that it does not take runs only to give them
 * back.
 */
final class Presence implements SmartLifecycle {
    private static final Logger LOG = LoggerFactory.getLogger(Presence.class);

    private final Workers workers;
    private final Workers.Announcement announcement;
    private final Scheduler scheduler;
    private final Fitness fitness;
    private volatile boolean running;
    private @Nullable String paused;

    Presence(Workers workers, Workers.Announcement announcement, Scheduler scheduler, Fitness fitness) {
        this.workers = workers;
        this.announcement = announcement;
        this.scheduler = scheduler;
        this.fitness = fitness;
    }

    @Override
    public void start() {
        try {
            workers.announce(announcement);
        } catch (DataAccessException e) {
            throw new IllegalStateException(
                    "worker " + announcement.id()
                            + " cannot announce itself: the database has no schema of Stook yet (the"
                            + " service makes it at its start) or does not answer. Start this process again later.",
                    e);
        }
        running = true;
        tick();
        scheduler.start();
        LOG.info("worker {} is ready", announcement.id());
    }

    /** Looks whether this process can work, claims or pauses accordingly, and says so. */
    @Scheduled(fixedDelayString = "PT5S")
    synchronized void tick() {
        if (!running) {
            return;
        }
        try {
            turn(trouble().orElse(null));
            workers.seen(announcement.id(), paused == null ? State.ACTIVE : State.PAUSED, paused, fitness.free());
        } catch (DataAccessException e) {
            LOG.warn("the database does not answer: {}", e.getMessage());
        }
    }

    private void turn(@Nullable String reason) {
        if (reason != null && paused == null) {
            LOG.warn("paused: {}", reason);
            scheduler.pause();
        } else if (reason == null && paused != null) {
            LOG.info("no longer paused");
            scheduler.resume();
        }
        paused = reason;
    }

    private Optional<String> trouble() {
        int schema = workers.schemaVersion();
        if (schema < announcement.schemaMin() || schema > announcement.schemaMax()) {
            return Optional.of("the database has schema %d, this version works on %d to %d"
                    .formatted(schema, announcement.schemaMin(), announcement.schemaMax()));
        }
        return fitness.trouble();
    }

    /** Hands the run in work back, if it is far from done, and takes leave. */
    @Override
    public void stop() {
        leave(State.DRAINING, "told to end");
        scheduler.stop();
        leave(State.GONE, "ended");
    }

    private synchronized void leave(State state, String reason) {
        running = false;
        try {
            workers.seen(announcement.id(), state, reason, fitness.free());
        } catch (DataAccessException e) {
            LOG.warn("leaving without a word, the database does not answer: {}", e.getMessage());
        }
    }

    @Override
    public boolean isRunning() {
        return running;
    }

    /** The range of schemas that this version works on. */
    static Workers.Announcement announcement(String id, String version) {
        return new Workers.Announcement(
                id,
                WorkerProperties.host(),
                ProcessHandle.current().pid(),
                version,
                Schema.OLDEST,
                Schema.NEWEST, // As it is where this runs.
                Runtime.getRuntime().maxMemory());
    }
}
