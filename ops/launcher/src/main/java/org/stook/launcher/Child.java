package org.stook.launcher;

import java.io.IOException;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** A program that is started again when it dies. For one thread at a time. */
final class Child {
    /** Starts a program. */
    interface Starter {
        Process start() throws IOException;
    }

    private final String name;
    private final Starter starter;
    private final RestartPolicy policy;
    private final Consumer<String> say;
    private @Nullable Process process;
    private Instant started = Instant.EPOCH;
    private @Nullable Instant due;
    private int deaths;

    Child(String name, Starter starter, RestartPolicy policy, Consumer<String> say) {
        this.name = name;
        this.starter = starter;
        this.policy = policy;
        this.say = say;
    }

    void start(Instant now) throws IOException {
        process = starter.start();
        started = now;
        due = null;
    }

    /** One look at it: a fresh death settles when it is started again, and at that time it is. */
    void tend(Instant now) {
        if (alive()) return;
        if (due == null) {
            deaths = policy.deathsInARow(deaths, Duration.between(started, now));
            Duration pause = policy.pause(deaths);
            due = now.plus(pause);
            say.accept(name + " ended" + code() + "; it is started again in " + pause.toSeconds() + " s");
        } else if (!now.isBefore(due)) {
            restart(now);
        }
    }

    private void restart(Instant now) {
        try {
            start(now);
            say.accept(name + " runs again as process " + pid());
        } catch (IOException e) {
            process = null;
            started = now;
            due = null;
            say.accept(name + " could not be started: " + e.getMessage());
        }
    }

    private String code() {
        return process == null ? "" : " with code " + process.exitValue();
    }

    String name() {
        return name;
    }

    boolean alive() {
        return process != null && process.isAlive();
    }

    /** Process id, -1 before the first start. */
    long pid() {
        return process == null ? -1 : process.pid();
    }

    /** Asks it to end (SIGTERM). */
    void ask() {
        if (process != null) process.destroy();
    }

    /** Waits for its end and, after that long, ends it. @return whether it ended by itself */
    boolean end(Duration patience) {
        if (process == null) return true;
        try {
            if (process.waitFor(patience.toMillis(), TimeUnit.MILLISECONDS)) return true;
            process.destroyForcibly().waitFor();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            process.destroyForcibly();
        }
        return false;
    }
}
