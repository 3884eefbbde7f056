package org.stook.drills.fault;

import java.util.List;
import java.util.Random;
import org.stook.drills.stage.Stage;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;

/** An operator with a restless hand. Whatever was held is released again before long. */
final class Operator {
    private static final String NAME = "operator";

    int act(Stage stage, Random random) {
        release(stage);
        List<RunId> open = runs(stage, "('READY', 'HELD', 'RUNNING', 'PUBLISHING')");
        if (open.isEmpty()) {
            return 0;
        }
        RunId run = open.get(random.nextInt(open.size()));
        boolean done = switch (random.nextInt(4)) {
            case 0 -> stage.runs().hold(run, NAME, "drill").done();
            case 1 -> stage.runs().cancel(run, NAME, "drill").done();
            case 2 -> stage.runs().prioritise(run, Priorities.ON_TABLE, NAME).done();
            default -> stage.runs().prioritise(run, Priorities.BACKLOG, NAME).done();
        };
        return done ? 1 : 0;
    }

    private static void release(Stage stage) {
        runs(stage, "('HELD')").forEach(run -> stage.runs().release(run, NAME));
    }

    private static List<RunId> runs(Stage stage, String states) {
        return stage.jdbc()
                .sql("select id from stook.run where state in " + states + " order by id")
                .query((row, n) -> new RunId(row.getLong(1)))
                .list();
    }
}
