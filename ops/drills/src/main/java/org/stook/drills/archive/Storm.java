package org.stook.drills.archive;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.stook.drills.stage.Processes;
import org.stook.drills.stage.Service;
import org.stook.drills.stage.Stage;

/** Publishers that are killed and replaced, and other mischief, by chance. */
final class Storm implements AutoCloseable {
    private static final int MOST_MILLIS_BETWEEN = 2500;
    /** Of twenty strikes; the rest kill a publisher. */
    private static final int CUTS = 8;

    private static final int SERVICE_KILLS = 3;
    /** So many questions it answers at least between two kills, or it would never come to it. */
    private static final int ANSWERS_BETWEEN = 25;

    private final Stage stage;
    private final int pauseMillis;
    private final SplittableRandom random;
    private final Process[] publishers;
    private long next;
    private int answers;
    private int started;
    private int killed;
    private int cut;
    private int serviceKilled;

    Storm(Stage stage, int publishers, int pauseMillis, SplittableRandom random) {
        this.stage = stage;
        this.pauseMillis = pauseMillis;
        this.random = random;
        this.publishers = new Process[publishers];
    }

    void begin() throws IOException {
        for (int i = 0; i < publishers.length; i++) publishers[i] = start();
    }

    private Process start() throws IOException {
        started++;
        List<String> command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx64m",
                "-XX:TieredStopAtLevel=1",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                PublisherProcess.class.getName(),
                stage.database().source().getJdbcUrl(),
                stage.database().username(),
                stage.database().password(),
                "publisher-" + started,
                Integer.toString(pauseMillis),
                Long.toString(random.nextLong())));
        return new ProcessBuilder(command)
                .redirectErrorStream(true)
                .redirectOutput(ProcessBuilder.Redirect.appendTo(
                        stage.folder().resolve("publishers.log").toFile()))
                .start();
    }

    /** Does harm when it is time again; replaces who has ended. */
    void strike(Service service) throws IOException, InterruptedException {
        if (System.nanoTime() >= next) {
            next = System.nanoTime() + 1_000_000L * random.nextInt(MOST_MILLIS_BETWEEN);
            int which = random.nextInt(20);
            if (which < CUTS) {
                cut();
            } else if (which < CUTS + SERVICE_KILLS && answers >= ANSWERS_BETWEEN) {
                service.kill();
                serviceKilled++;
                answers = 0;
            } else {
                kill(publishers[random.nextInt(publishers.length)]);
            }
        }
        for (int i = 0; i < publishers.length; i++) {
            if (!publishers[i].isAlive()) publishers[i] = start();
        }
    }

    /** The service has answered once more. */
    void answered() {
        answers++;
    }

    private void kill(Process publisher) throws IOException, InterruptedException {
        if (!publisher.isAlive()) return;
        Processes.signal("KILL", publisher.pid());
        killed++;
    }

    private void cut() {
        cut += stage.jdbc()
                .sql("select count(pg_terminate_backend(pid)) from (select pid from pg_stat_activity"
                        + " where datname = current_database() and pid <> pg_backend_pid() and state like 'idle in%'"
                        + " order by random() limit 1) one")
                .query(Integer.class)
                .single();
    }

    @Override
    public String toString() {
        return "%d publisher processes, %d of them killed; %d sessions cut inside a transaction; service killed %d times"
                .formatted(started, killed, cut, serviceKilled);
    }

    @Override
    public void close() {
        for (Process publisher : publishers) publisher.destroyForcibly();
    }
}
