package org.stook.drills.drill;

import java.nio.file.Files;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.stook.drills.fault.Fault;
import org.stook.drills.fault.Faults;
import org.stook.drills.stage.Slot;
import org.stook.drills.stage.Stage;

/** The drills there are. */
public final class Drills {
    /** More than a run comes to: the last ones of each sweep break nothing. */
    private static final int POINTS = 52;

    private Drills() {}

    public static List<Drill> all() {
        return List.of(
                calm("calm", "nothing goes wrong: the yardstick", Drill.Pace.NONE),
                calm("storm", "kill -9 of a busy worker every second or two", pace(400, 300, 2000), Faults.kill()),
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
                points("points", "each run's first attempt dies at its n-th point, n in turn", "die/"),
                points("calls", "each run's first attempt has an I/O error at its n-th call, n in turn", "fail/"),
                calm(
                        "mixed",
                        "all of it, by chance",
                        pace(250, 200, 1500),
                        Faults.kill(),
                        Faults.kill(),
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
        return new Drill(name, purpose, workers(3), List.of(faults), pace, new EachPublished());
    }

    private static Drill points(String name, String purpose, String failpoint) {
        Slot.Setup setup =
                new Slot.Setup(List.of("-Xmx256m", "-Dstook.failpoint=" + failpoint + POINTS), List.of(), Map.of());
        return new Drill(
                name, purpose, Collections.nCopies(3, setup), List.of(), new Drill.Pace(0, 200, 400), new Pointed());
    }

    private static List<Slot.Setup> workers(int count) {
        return Collections.nCopies(count, new Slot.Setup(List.of("-Xmx256m"), List.of(), Map.of()));
    }

    /** So many runs of whole stacks: each must be published. */
    static class EachPublished implements Drill.Casting {
        @Override
        public void order(Stage stage, int runs, Random random) throws Exception {
            stage.orderMinerals(runs);
        }

        @Override
        public List<String> verdict(Stage stage) {
            return stage.jdbc()
                    .sql("select 'run/' || id || ' is ' || state || ': ' || coalesce(reason_text, '') from stook.run"
                            + " where state <> 'PUBLISHED' order by id")
                    .query(String.class)
                    .list();
        }
    }

    /** The same where the workers break by themselves and say so. */
    static final class Pointed extends EachPublished {
        @Override
        public int ownFaults(Stage stage) throws Exception {
            List<String> lines = new ArrayList<>();
            for (Slot slot : stage.slots()) {
                lines.addAll(Files.readAllLines(stage.folder().resolve(slot.name() + ".log")));
            }
            return (int) lines.stream()
                    .filter(l -> l.startsWith("dies at ") || l.startsWith("fails at "))
                    .count();
        }
    }
}
