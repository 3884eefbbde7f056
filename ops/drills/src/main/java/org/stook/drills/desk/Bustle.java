package org.stook.drills.desk;

import java.util.List;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.stook.drills.stage.Stage;

/** Eight runs at work: each says twice a second how far it is. */
final class Bustle implements AutoCloseable {
    private static final int RUNS = 8;
    private static final List<String> STAGES = List.of("survey", "register", "blend", "finish", "score", "publish");
    private static final int ROUNDS_A_RUN = 240;

    private final Stage stage;
    private final List<Long> runs;
    private final ScheduledExecutorService clock = Executors.newSingleThreadScheduledExecutor();
    private int round;

    Bustle(Stage stage) {
        this.stage = stage;
        this.runs = stage.jdbc()
                .sql("update stook.run set state = 'RUNNING', attempt = attempt + 1, stage = 'survey' where id <= ?"
                        + " returning id")
                .param(RUNS)
                .query(Long.class)
                .list();
        clock.scheduleAtFixedRate(this::step, 0, 500L / RUNS, TimeUnit.MILLISECONDS);
    }

    private void step() {
        double fraction = (double) (round % ROUNDS_A_RUN) / ROUNDS_A_RUN;
        stage.jdbc()
                .sql("update stook.run set stage = ?, fraction = ? where id = ?")
                .param(STAGES.get((int) (fraction * STAGES.size())))
                .param(fraction)
                .param(runs.get(round % runs.size()))
                .update();
        round++;
    }

    @Override
    public void close() {
        clock.shutdownNow();
    }
}
