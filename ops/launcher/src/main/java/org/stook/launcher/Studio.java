package org.stook.launcher;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;
import org.stook.postgres.FolderLock;
import org.stook.postgres.LocalPostgres;
import org.stook.postgres.PostgresOptions;

/** A whole studio on this machine: started in order, watched, stopped in the reverse order. */
public final class Studio implements AutoCloseable {
    private static final Duration WORKER_PATIENCE = Duration.ofSeconds(30);
    private static final Duration SERVICE_PATIENCE = Duration.ofSeconds(20);
    private static final long LOOK_EVERY_MS = 250;

    private final Consumer<String> say;
    private final List<Child> workers = new ArrayList<>();
    private final CountDownLatch stop = new CountDownLatch(1);
    private final CountDownLatch stopped = new CountDownLatch(1);
    private StudioPlan plan;
    private @Nullable FolderLock lock;
    private @Nullable LocalPostgres postgres;
    private @Nullable Child service;
    private @Nullable Thread watch;
    private volatile @Nullable String failure;
    private boolean closing;

    Studio(StudioPlan plan, Consumer<String> say) {
        this.plan = plan;
        this.say = say;
    }

    /**
     * Starts everything and returns when the service answers.
     *
     * @throws IOException with what was found: port taken, disk full, home in use, a program that ended; what was started
     *     until then runs on until {@link #close()}
     */
    void start() throws IOException {
        lock = Home.open(plan);
        plan = plan.withPort(Ports.free(plan.address(), plan.port()));
        say.accept("PostgreSQL starts in " + plan.home().resolve("postgres"));
        LocalPostgres database =
                LocalPostgres.start(PostgresOptions.kept(plan.home().resolve("postgres"), 0));
        postgres = database;
        try {
            database.ensureDatabase(Children.DATABASE);
        } catch (SQLException e) {
            throw new LaunchFailure("the database could not be made: " + e.getMessage(), e);
        }
        Children children = new Children(plan, database);
        ChildPlan servicePlan = children.service();
        service = launch(servicePlan);
        Answer.await(url(), service, servicePlan);
        for (ChildPlan worker : children.workers()) workers.add(launch(worker));
        watch = new Thread(this::watch, "watch");
        watch.setDaemon(true);
        watch.start();
    }

    private Child launch(ChildPlan childPlan) throws IOException {
        if (stop.getCount() == 0) throw new LaunchFailure("stopped while it was starting");
        Child child = new Child(childPlan.name(), childPlan::start, RestartPolicy.USUAL, say);
        child.start(Instant.now());
        say.accept(childPlan.name() + " is process " + child.pid() + ", log " + childPlan.log());
        return child;
    }

    private void watch() {
        LocalPostgres database = postgres;
        if (database == null) return;
        try {
            while (!stop.await(LOOK_EVERY_MS, TimeUnit.MILLISECONDS)) {
                if (service != null) service.tend(Instant.now());
                workers.forEach(worker -> worker.tend(Instant.now()));
                if (ProcessHandle.of(database.pid()).isEmpty()) {
                    failure = "PostgreSQL, process " + database.pid() + ", ended; see its log in "
                            + plan.home().resolve("postgres");
                    stop.countDown();
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    /** Where the queue is seen. */
    public URI url() {
        return URI.create("http://" + plan.address() + ":" + plan.port() + "/");
    }

    StudioPlan plan() {
        return plan;
    }

    /** What a person has to know to get in: the queue's address, before that the one that makes an administrator. */
    public List<String> wayIn() {
        try {
            String code = Files.readString(plan.setupCode()).trim();
            return List.of(
                    "the queue is at " + url(),
                    "nobody can sign in yet; the first one becomes the administrator at " + url() + "setup?code="
                            + code);
        } catch (IOException e) {
            // No file: there is an administrator.
            return List.of("the queue is at " + url());
        }
    }

    /** A connection to the studio's database. */
    public Connection connect() throws SQLException {
        LocalPostgres database = postgres;
        if (database == null) throw new IllegalStateException("the studio is not started");
        return DriverManager.getConnection(database.url(Children.DATABASE), database.username(), database.password());
    }

    /** Returns when the studio has stopped, or throws when it cannot go on. */
    public void serve() throws IOException, InterruptedException {
        stop.await();
        String problem = failure;
        if (problem != null) throw new LaunchFailure(problem);
        stopped.await();
    }

    /** Stops the workers, then the service, then PostgreSQL, and waits for each. Further calls do nothing. */
    @Override
    public synchronized void close() throws IOException {
        if (closing) return;
        closing = true;
        stop.countDown();
        joinWatch();
        if (!workers.isEmpty()) say.accept("the workers stop");
        workers.forEach(Child::ask);
        workers.forEach(worker -> end(worker, WORKER_PATIENCE));
        if (service != null) {
            service.ask();
            end(service, SERVICE_PATIENCE);
        }
        if (postgres != null) {
            postgres.close();
            say.accept("all is stopped");
        }
        if (lock != null) lock.close();
        stopped.countDown();
    }

    private void joinWatch() {
        try {
            if (watch != null) watch.join();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private void end(Child child, Duration patience) {
        if (!child.end(patience)) {
            say.accept(child.name() + " did not stop within " + patience.toSeconds() + " s and was killed");
        }
    }
}
