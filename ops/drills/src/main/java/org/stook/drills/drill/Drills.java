package org.stook.drills.drill;

import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.stook.drills.fault.Fault;
import org.stook.drills.fault.Faults;
import org.stook.drills.stage.Skew;
import org.stook.drills.stage.Slot;

/** The drills there are. */
public final class Drills {
    /** More than a run comes to: the last ones of each sweep break nothing. */
    private static final int POINTS = 256;

    private Drills() {}

    public static List<Drill> all() {
        return List.of(
                calm("calm", "nothing goes wrong: the yardstick", Drill.Pace.NONE),
                new Drill(
                        "storm",
                        "kill -9 of a busy worker every second or two, one worker spared to take over",
                        workers(4),
                        List.of(Faults.kill("w4")),
                        pace(400, 300, 2000),
                        new Castings.EachPublished()),
                calm(
                        "freeze",
                        "SIGSTOP for 32 s, longer than the heartbeat's patience",
                        pace(30, 2000, 6000),
                        Faults.freeze(32)),
                calm(
                        "cut",
                        "the wire to the database silent for 5 to 40 s, or all connections reset",
                        pace(60, 500, 3000),
                        Faults.cut(5),
                        Faults.cut(18),
                        Faults.cut(40),
                        Faults.reset()),
                calm("sessions", "the database ends workers' sessions", pace(120, 200, 1000), Faults.sessions()),
                calm(
                        "restarts",
                        "the database ends without a checkpoint and comes back",
                        pace(15, 3000, 9000),
                        Faults.outage(1)),
                calm("outage", "the database is away for 40 s", pace(2, 5000, 9000), Faults.outage(40)),
                calm("long-outage", "the database is away for 5 minutes", pace(1, 3000, 4000), Faults.outage(300)),
                points(
                        "boundaries",
                        "each run's first attempt dies at one of the named points, all of them in turn",
                        "each",
                        new Castings.EachPointed()),
                points(
                        "points",
                        "each run's first attempt dies at its n-th point, n in turn",
                        "die/" + POINTS,
                        new Castings.Pointed()),
                points(
                        "calls",
                        "each run's first attempt has an I/O error at its n-th call, n in turn",
                        "fail/" + POINTS,
                        new Castings.Pointed()),
                onSmallDisk("full", "the output share is full for 15 s", Faults.full(15)),
                onSmallDisk("locked", "the output share is read-only for 15 s", Faults.locked(15)),
                onSmallDisk("vanished", "the output share is not mounted for 12 s", Faults.vanished(12)),
                cast(
                        "operator",
                        "a restless operator",
                        pace(60, 100, 900),
                        new Castings.SomeCancelled(),
                        Faults.operator()),
                cast("poison", "two stacks that kill every worker", Drill.Pace.NONE, new Castings.Poisoned()),
                new Drill(
                        "memory",
                        "two stacks that make the kernel kill every worker for its memory",
                        Collections.nCopies(
                                3, new Slot.Setup(List.of("-Xmx2g"), List.of(), Map.of(), false, 400L << 20)),
                        List.of(),
                        Drill.Pace.NONE,
                        new Castings.Poisoned()),
                cast("malformed", "a broken frame in each stack", Drill.Pace.NONE, new Castings.Malformed()),
                new Drill(
                        "hosts",
                        "each worker on a host of its own, whose cable is pulled for 4, 12 or 40 s",
                        Collections.nCopies(3, new Slot.Setup(List.of("-Xmx256m"), List.of(), Map.of(), true, 0)),
                        List.of(Faults.pulled(4), Faults.pulled(12), Faults.pulled(40)),
                        pace(20, 2000, 6000),
                        new Castings.EachPublished()),
                new Drill(
                        "skew",
                        "one worker's clock a minute behind, another's a minute ahead",
                        List.of(skewed(-60), skewed(60), skewed(0)),
                        List.of(),
                        Drill.Pace.NONE,
                        new Castings.NobodyLost()),
                calm(
                        "mixed",
                        "all of it, by chance",
                        pace(250, 200, 1500),
                        Faults.kill(""),
                        Faults.kill(""),
                        Faults.freeze(32),
                        Faults.cut(18),
                        Faults.reset(),
                        Faults.sessions(),
                        Faults.sessions(),
                        Faults.outage(1)));
    }

    private static Drill.Pace pace(int faults, int least, int most) {
        return new Drill.Pace(faults, least, most);
    }

    private static Drill calm(String name, String purpose, Drill.Pace pace, Fault... faults) {
        return new Drill(name, purpose, workers(3), List.of(faults), pace, new Castings.EachPublished());
    }

    private static Drill cast(String name, String purpose, Drill.Pace pace, Drill.Casting casting, Fault... faults) {
        return new Drill(name, purpose, workers(3), List.of(faults), pace, casting);
    }

    private static Drill onSmallDisk(String name, String purpose, Fault fault) {
        Slot.Setup setup = new Slot.Setup(List.of("-Xmx256m"), List.of("stook.worker.room.least-free=4MB"), Map.of());
        return new Drill(
                name,
                purpose,
                Collections.nCopies(3, setup),
                List.of(fault),
                pace(3, 3000, 8000),
                new Castings.OnSmallDisk());
    }

    private static Slot.Setup skewed(int seconds) {
        return new Slot.Setup(List.of("-Xmx256m"), List.of(), Skew.by(seconds));
    }

    private static Drill points(String name, String purpose, String failpoint, Drill.Casting casting) {
        Slot.Setup setup = new Slot.Setup(List.of("-Xmx256m", "-Dstook.failpoint=" + failpoint), List.of(), Map.of());
        return new Drill(name, purpose, Collections.nCopies(3, setup), List.of(), new Drill.Pace(0, 200, 400), casting);
    }

    private static List<Slot.Setup> workers(int count) {
        return Collections.nCopies(count, new Slot.Setup(List.of("-Xmx256m"), List.of(), Map.of()));
    }
}
