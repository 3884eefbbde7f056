package org.stook.drills.desk;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.stook.drills.scale.Backlog;
import org.stook.drills.stage.Service;
import org.stook.drills.stage.Stage;
import org.stook.orders.RunId;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** Many open dashboards on a busy studio. */
@Command(
        name = "desk",
        mixinStandardHelpOptions = true,
        description =
                "Opens many queue pages on a real service while eight runs report their progress and a long queue waits;"
                        + " prints what the pages cost and how soon they show what happened.")
public final class DeskCommand implements Callable<Integer> {
    private static final double MOST_PERCENT = 10;
    private static final double LONGEST_MILLIS = 1000;
    private static final int SECONDS_BETWEEN_EVENTS = 2;

    @Option(names = "--dashboards", defaultValue = "50", description = "open pages (${DEFAULT-VALUE})")
    private int count;

    @Option(names = "--queued", defaultValue = "100000", description = "runs that wait (${DEFAULT-VALUE})")
    private int queued;

    @Option(names = "--seconds", defaultValue = "40", description = "each half of the measuring (${DEFAULT-VALUE})")
    private int seconds;

    @Option(names = "--port", defaultValue = "18473", description = "of the service (${DEFAULT-VALUE})")
    private int port;

    @Override
    public Integer call() throws Exception {
        Path work = Path.of(System.getProperty("stook.drills.work")).resolve("desk");
        try (Stage stage = Stage.open(work, new Stage.Plan(240, 160, false))) {
            new Backlog(stage).fill(queued);
            System.err.println("the queue is laid out; the service starts");
            try (Service service = new Service(stage, port, List.of("-Xmx512m"), false);
                    Bustle bustle = new Bustle(stage)) {
                return measure(stage, service);
            }
        }
    }

    private int measure(Stage stage, Service service) throws Exception {
        try (Dashboards warm = new Dashboards(service, count)) {
            TimeUnit.SECONDS.sleep(seconds); // What the virtual machine has to learn is no cost of a page.
        }
        TimeUnit.SECONDS.sleep(5);
        Cost began = Cost.now(service, stage);
        TimeUnit.SECONDS.sleep(seconds);
        Cost alone = Cost.now(service, stage);
        try (Dashboards pages = new Dashboards(service, count)) {
            TimeUnit.SECONDS.sleep(3); // Until all are there.
            Cost before = Cost.now(service, stage);
            long characters = pages.characters();
            double[] millis = events(stage, pages);
            Cost after = Cost.now(service, stage);
            double each = (pages.characters() - characters) / (double) count / seconds;
            return print(new Cost[] {began, alone, before, after}, millis, pages.connected(), each);
        }
    }

    /** Holds runs, each with words of its own. @return how long each page took to show each, sorted */
    private double[] events(Stage stage, Dashboards pages) throws InterruptedException {
        Map<String, Long> events = new LinkedHashMap<>();
        for (int i = 0; i < seconds / SECONDS_BETWEEN_EVENTS; i++) {
            String mark = "event %03d of the drill".formatted(i);
            pages.await(mark);
            stage.runs().hold(new RunId(1000 + i), "drill", mark);
            events.put(mark, System.nanoTime());
            TimeUnit.SECONDS.sleep(SECONDS_BETWEEN_EVENTS);
        }
        List<Double> millis = new ArrayList<>();
        events.forEach((mark, at) -> {
            List<Long> heard = pages.heard(mark);
            heard.forEach(when -> millis.add((when - at) / 1e6));
            for (int missed = heard.size(); missed < count; missed++) millis.add(Double.POSITIVE_INFINITY);
        });
        return millis.stream().mapToDouble(Double::doubleValue).sorted().toArray();
    }

    private int print(Cost[] costs, double[] millis, long connected, double bytesEach) {
        double service = costs[3].servicePercent(costs[2]) - costs[1].servicePercent(costs[0]);
        double database = costs[3].databasePercent(costs[2]) - costs[1].databasePercent(costs[0]);
        double longest = millis[millis.length - 1];
        System.out.printf(
                "%d dashboards (%d connected) over %d waiting runs and 8 at work: %.1f %% of a core in the service, %.1f %% in"
                        + " the database, %.1f kB/s each%n",
                count, connected, queued, service, database, bytesEach / 1e3);
        System.out.printf(
                "event to screen, ms: median %.0f, 95 %% %.0f, longest %.0f (%d events)%n",
                millis[millis.length / 2],
                millis[(int) Math.ceil(0.95 * millis.length) - 1],
                longest,
                millis.length / count);
        return service + database < MOST_PERCENT && longest <= LONGEST_MILLIS ? 0 : 2;
    }
}
