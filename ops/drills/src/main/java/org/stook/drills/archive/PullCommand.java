package org.stook.drills.archive;

import java.io.IOException;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import java.util.TreeSet;
import java.util.concurrent.Callable;
import java.util.concurrent.TimeUnit;
import org.stook.drills.stage.Service;
import org.stook.drills.stage.Stage;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;

/** Pulls what is new by cursor while publishers, database sessions and the service itself are killed. */
@Command(
        name = "pull",
        mixinStandardHelpOptions = true,
        description =
                "Publishes runs from several processes that are killed again and again, kills the service and sessions of"
                        + " the database too, and pulls what is new by cursor all the while: none may be missed, none come twice.")
public final class PullCommand implements Callable<Integer> {
    @Option(names = "--publications", defaultValue = "500", description = "${DEFAULT-VALUE}")
    private int publications;

    @Option(names = "--publishers", defaultValue = "4", description = "processes (${DEFAULT-VALUE})")
    private int publishers;

    @Option(names = "--page", defaultValue = "7", description = "publications an answer (${DEFAULT-VALUE})")
    private int page;

    @Option(names = "--port", defaultValue = "18471", description = "of the service (${DEFAULT-VALUE})")
    private int port;

    @Option(names = "--seed", defaultValue = "1")
    private long seed;

    @Option(
            names = "--pause",
            defaultValue = "300",
            description = "most milliseconds a publisher works on a run (${DEFAULT-VALUE})")
    private int pause;

    private final List<Long> runs = new ArrayList<>();
    private final List<Long> numbers = new ArrayList<>();
    private long cursor;
    private int asked;
    private int failed;

    @Override
    public Integer call() throws Exception {
        Path work = Path.of(System.getProperty("stook.drills.work")).resolve("pull");
        SplittableRandom random = new SplittableRandom(seed);
        try (Stage stage = Stage.open(work, new Stage.Plan(240, 160, false))) {
            stage.orderMinerals(publications);
            System.err.println(publications + " runs are waiting; the service starts");
            try (Service service = new Service(stage, port, List.of("-Xmx256m"), false);
                    Storm storm = new Storm(stage, publishers, pause, random.split())) {
                storm.begin();
                System.err.println("the storm begins");
                long began = System.nanoTime();
                while (stage.open() > 0 || cursor < newest(stage)) {
                    if (stage.open() > 0) storm.strike(service);
                    if (pull(service)) storm.answered();
                    TimeUnit.MILLISECONDS.sleep(random.nextInt(60));
                }
                while (!pull(service)) TimeUnit.MILLISECONDS.sleep(300);
                return verdict(stage, storm, (System.nanoTime() - began) / 1e9);
            }
        }
    }

    private static long newest(Stage stage) {
        return stage.jdbc()
                .sql("select coalesce(max(seq), 0) from stook.publication_order")
                .query(Long.class)
                .single();
    }

    /** Asks once. @return false if no answer came: the same question is asked again next time */
    private boolean pull(Service service) throws InterruptedException {
        asked++;
        try {
            HttpResponse<String> answer = service.client()
                    .send(
                            service.request("/api/archive/new?limit=" + page + "&after=" + cursor)
                                    .build(),
                            HttpResponse.BodyHandlers.ofString());
            if (answer.statusCode() != 200) {
                failed++;
                return false;
            }
            JsonNode body = JsonMapper.shared().readTree(answer.body());
            body.path("items").forEach(item -> {
                runs.add(item.path("runId").asLong());
                numbers.add(item.path("seq").asLong());
            });
            cursor = body.path("next").asLong();
            return true;
        } catch (IOException e) {
            failed++;
            return false;
        }
    }

    private int verdict(Stage stage, Storm storm, double seconds) {
        TreeSet<Long> published = new TreeSet<>(stage.jdbc()
                .sql("select run_id from stook.publication")
                .query(Long.class)
                .list());
        TreeSet<Long> pulled = new TreeSet<>(runs);
        long missed = published.stream().filter(run -> !pulled.contains(run)).count();
        long twice = (long) runs.size() - pulled.size();
        boolean inOrder = true;
        for (int i = 0; i < numbers.size(); i++) inOrder &= numbers.get(i) == i + 1L;
        System.out.printf(
                "%d published, %d pulled in %d questions (%d without an answer), %.0f s%n",
                published.size(), runs.size(), asked, failed, seconds);
        System.out.println(storm);
        System.out.printf("missed %d, twice %d, numbers without a gap: %s%n", missed, twice, inOrder ? "yes" : "NO");
        return missed == 0 && twice == 0 && inOrder && published.size() == publications ? 0 : 2;
    }
}
