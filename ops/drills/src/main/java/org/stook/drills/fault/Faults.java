package org.stook.drills.fault;

import java.io.IOException;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.TimeUnit;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.drills.stage.Namespace;
import org.stook.drills.stage.Processes;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;

/** The faults that can be inflicted on a running studio. */
public final class Faults {
    private Faults() {}

    private interface Blow {
        int strike(Stage stage, Random random) throws Exception;
    }

    private static Fault of(String name, Blow blow) {
        return new Fault() {
            @Override
            public String name() {
                return name;
            }

            @Override
            public int inflict(Stage stage, Random random) throws Exception {
                return blow.strike(stage, random);
            }
        };
    }

    private interface OnWorker {
        void strike(Busy busy) throws Exception;
    }

    private static Fault onWorker(String name, OnWorker blow) {
        return onWorker(name, "", blow);
    }

    private static Fault onWorker(String name, String spared, OnWorker blow) {
        return of(name, (stage, random) -> {
            // Anywhere within a run: the claim is seen as soon as it is made.
            TimeUnit.MILLISECONDS.sleep(random.nextInt(300));
            Optional<Busy> busy = Busy.any(stage, random, spared);
            if (busy.isEmpty()) {
                return 0;
            }
            note(stage.jdbc(), name, busy.get());
            blow.strike(busy.get());
            return 1;
        });
    }

    /** In a table of the drill's own, with the database's time, for the measure of takeovers. */
    private static void note(JdbcClient jdbc, String kind, Busy busy) {
        jdbc.sql("insert into drill.fault (kind, run_id, attempt, worker_id) values (?, ?, ?, ?)")
                .params(kind, busy.run(), busy.attempt(), busy.slot().name())
                .update();
    }

    /**
     * SIGKILL, as by the kernel when memory ends.
     *
     * @param spared worker that is never killed, so that a slot is there for taking over; empty for none
     */
    public static Fault kill(String spared) {
        return onWorker(
                "kill", spared, busy -> Processes.signal("KILL", busy.slot().pid()));
    }

    /** SIGSTOP for longer than the heartbeat's patience, and SIGCONT: the worker wakes up and believes no time has passed. */
    public static Fault freeze(int seconds) {
        return onWorker("freeze", busy -> later(seconds, "CONT", stopped(busy)));
    }

    private static long stopped(Busy busy) throws Exception {
        long pid = busy.slot().pid();
        Processes.signal("STOP", pid);
        return pid;
    }

    private static void later(int seconds, String signal, long pid) {
        Thread waking = new Thread(
                () -> {
                    try {
                        TimeUnit.SECONDS.sleep(seconds);
                        Processes.signal(signal, pid);
                    } catch (IOException | InterruptedException e) {
                        throw new IllegalStateException(e);
                    }
                },
                "waking");
        waking.setDaemon(true);
        waking.start();
    }

    /** The wire to the database goes silent for so long. */
    public static Fault cut(int seconds) {
        return onWorker("cut", busy -> {
            Slot slot = busy.slot();
            slot.wire().cut();
            Thread mending = new Thread(() -> {
                try {
                    TimeUnit.SECONDS.sleep(seconds);
                    slot.wire().mend();
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            });
            mending.setDaemon(true);
            mending.start();
        });
    }

    /** The network cable of the worker's own host is pulled for so long. */
    public static Fault pulled(int seconds) {
        return onWorker("pulled", busy -> {
            Namespace host = busy.slot().host();
            host.pull();
            Thread plugging = new Thread(() -> {
                try {
                    TimeUnit.SECONDS.sleep(seconds);
                    host.plug();
                } catch (IOException | InterruptedException e) {
                    throw new IllegalStateException(e);
                }
            });
            plugging.setDaemon(true);
            plugging.start();
        });
    }

    /** All connections of a worker are reset. */
    public static Fault reset() {
        return onWorker("reset", busy -> busy.slot().wire().mend());
    }

    /** The database ends some of the workers' sessions, as an administrator or a failing proxy would. */
    public static Fault sessions() {
        return of(
                "sessions",
                (stage, random) -> stage.jdbc().sql("""
                        select count(pg_terminate_backend(pid)) from (
                          select pid from pg_stat_activity where application_name = 'stook-node' order by random() limit 2) s""").query(Integer.class).single());
    }

    /** The database ends without a checkpoint and is away for so long. */
    public static Fault outage(int seconds) {
        return of("outage", (stage, random) -> {
            stage.database().outage(seconds);
            return 1;
        });
    }

    /** The share that composites go to is full for so long. */
    public static Fault full(int seconds) {
        return of("full", (stage, random) -> {
            stage.smallDisk().fill();
            TimeUnit.SECONDS.sleep(seconds);
            stage.smallDisk().empty();
            return 1;
        });
    }

    /** It is read-only for so long. */
    public static Fault locked(int seconds) {
        return of("locked", (stage, random) -> {
            stage.smallDisk().lock();
            TimeUnit.SECONDS.sleep(seconds);
            stage.smallDisk().unlock();
            return 1;
        });
    }

    /** It is not mounted for so long. */
    public static Fault vanished(int seconds) {
        return of("vanished", (stage, random) -> {
            stage.smallDisk().vanish();
            TimeUnit.SECONDS.sleep(seconds);
            stage.smallDisk().appear();
            return 1;
        });
    }

    /** An operator does something to some run: holds and releases, cancels, moves up or down. */
    public static Fault operator() {
        return of("operator", new Operator()::act);
    }
}
