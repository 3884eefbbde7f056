package org.stook.drills.scale;

import com.zaxxer.hikari.HikariDataSource;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.stook.drills.stage.Stage;
import org.stook.orders.Priorities;
import org.stook.orders.RunId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Many slots and a long queue. */
@Command(
        name = "scale",
        mixinStandardHelpOptions = true,
        description =
                "Lets simulated slots work off a long queue with the true claims; prints how long slots stand free, how"
                        + " soon a mounted subject's run starts, and whether anything starves.")
public final class ScaleCommand implements Callable<Integer> {
    private static final int CONNECTIONS = 40;
    private static final int HOT_EVERY_SECONDS = 3;

    @Option(names = "--slots", defaultValue = "200", description = "${DEFAULT-VALUE}")
    private int slots;

    @Option(names = "--queued", defaultValue = "50000", description = "runs that wait (${DEFAULT-VALUE})")
    private int queued;

    @Option(
            names = "--work",
            defaultValue = "4000",
            description = "milliseconds a run takes on average (${DEFAULT-VALUE})")
    private int workMillis;

    @Option(names = "--seconds", defaultValue = "60", description = "how long to look (${DEFAULT-VALUE})")
    private int seconds;

    @Option(names = "--seed", defaultValue = "1")
    private long seed;

    @Override
    public Integer call() throws Exception {
        try (Stage stage = Stage.open(
                Path.of(System.getProperty("stook.drills.work")).resolve("scale"), new Stage.Plan(240, 160, true))) {
            Backlog backlog = new Backlog(stage);
            backlog.fill(queued);
            JdbcClient jdbc = stage.jdbc();
            long before = calls(jdbc);
            try (SimulatedSlots simulated =
                    new SimulatedSlots(pool(stage), slots, workMillis, new SplittableRandom(seed))) {
                simulated.start();
                TimeUnit.SECONDS.sleep(10); // Until all have their first run.
                List<RunId> hot = heat(stage, backlog);
                TimeUnit.MILLISECONDS.sleep(2L * workMillis);
                print(stage, simulated, hot, calls(jdbc) - before);
            }
            return 0;
        }
    }

    private List<RunId> heat(Stage stage, Backlog backlog) throws Exception {
        List<RunId> hot = new ArrayList<>();
        int lifted = 0;
        for (int second = 0; second < seconds; second += HOT_EVERY_SECONDS) {
            hot.add(backlog.order(Priorities.ON_TABLE));
            // Far more often than the service does it.
            lifted += stage.upkeep().age();
            TimeUnit.SECONDS.sleep(HOT_EVERY_SECONDS);
        }
        System.out.printf("ageing lifted %d times meanwhile%n", lifted);
        return hot;
    }

    private void print(Stage stage, SimulatedSlots simulated, List<RunId> hot, long transactions) {
        Figures figures = new Figures(stage.jdbc());
        System.out.printf(
                "%d slots, %d queued, %d done, %.1f transactions/s%n",
                slots, queued, simulated.done(), transactions / (seconds + 10.0 + 2 * workMillis / 1000.0));
        System.out.printf("slot free with work waiting, s: %s%n", Figures.percentiles(simulated.idle()));
        System.out.printf("claim statement (fetch and lock one), ms: %s%n", Figures.percentiles(figures.claimMillis()));
        System.out.printf(
                "hot run: claims by others between its order and its start, at most %d; waited, s: %s%n",
                figures.overtaken(hot), Figures.percentiles(figures.waited(hot)));
        System.out.printf("longest waiting start by given priority: %s%n", figures.byPriority());
    }

    private static long calls(JdbcClient jdbc) {
        return jdbc.sql("select xact_commit + xact_rollback from pg_stat_database where datname = current_database()")
                .query(Long.class)
                .single();
    }

    private static HikariDataSource pool(Stage stage) {
        HikariDataSource pool = new HikariDataSource();
        pool.setJdbcUrl(stage.database().source().getJdbcUrl());
        pool.setUsername(stage.database().username());
        pool.setPassword(stage.database().password());
        pool.setMaximumPoolSize(CONNECTIONS);
        return pool;
    }
}
