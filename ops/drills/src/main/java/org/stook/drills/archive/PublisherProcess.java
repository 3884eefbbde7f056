package org.stook.drills.archive;

import com.zaxxer.hikari.HikariDataSource;
import java.util.List;
import java.util.SplittableRandom;
import java.util.concurrent.TimeUnit;
import org.springframework.dao.DataAccessException;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.DataSourceTransactionManager;
import org.springframework.transaction.TransactionException;
import org.stook.orders.RunId;
import org.stook.orders.Workers;
import org.stook.orders.attempt.Attempt;
import org.stook.orders.attempt.Outcome;
import org.stook.orders.attempt.PublishedResult;
import org.stook.orders.attempt.RunTask;
import org.stook.orders.attempt.StagedResult;

/**
 * A process that publishes runs as fast as it can: claims, fence and publishing transactions are the true ones, the work between
 * them is a pause, and there are no files. Made to be killed at any moment.
 */
final class PublisherProcess {
    private static final String HASH = "ef".repeat(32);

    private PublisherProcess() {}

    /** @param args URL, user and password of the database, the worker's name, the most milliseconds a run takes, a seed */
    public static void main(String[] args) throws InterruptedException {
        try (HikariDataSource source = new HikariDataSource()) {
            source.setJdbcUrl(args[0]);
            source.setUsername(args[1]);
            source.setPassword(args[2]);
            source.setMaximumPoolSize(2);
            new Workers(source).announce(new Workers.Announcement(args[3], "drill", 1, "0", 1, 99, 1L << 40));
            RunTask task = new RunTask(source, new DataSourceTransactionManager(source), args[3], "0");
            work(
                    JdbcClient.create(source),
                    task,
                    Integer.parseInt(args[4]),
                    new SplittableRandom(Long.parseLong(args[5])));
        }
    }

    private static void work(JdbcClient jdbc, RunTask task, int pauseMillis, SplittableRandom random)
            throws InterruptedException {
        while (true) {
            // Whatever a killed publisher left is open, too: the queue would hand it out again after a while, here it
            // is at once.
            List<Long> open = jdbc.sql(
                            "select id from stook.run where state in ('READY', 'RUNNING', 'PUBLISHING') order by random() limit 1")
                    .query(Long.class)
                    .list();
            if (open.isEmpty()) return;
            try {
                task.workOnce(new RunId(open.get(0)), attempt -> publish(attempt, random.nextInt(pauseMillis)));
            } catch (DataAccessException | TransactionException e) {
                System.err.println("run " + open.get(0) + " is left to whoever comes next: " + e.getMessage());
            }
        }
    }

    private static Outcome publish(Attempt attempt, int millis) {
        try {
            TimeUnit.MILLISECONDS.sleep(millis);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
        long run = attempt.order().run().value();
        if (attempt.staged() == null) attempt.publishing(new StagedResult("s/" + run, "f/" + run, HASH));
        attempt.published(new PublishedResult(1, "[]", null, null));
        return new Outcome.Published();
    }
}
