package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.stook.app.queue.Line;
import org.stook.app.queue.Wanted;
import org.stook.app.testing.Caller;
import org.stook.app.testing.Everyone;
import org.stook.app.testing.OneStation;
import org.stook.postgres.testing.TestDatabase;

/** The queue page over many stacks: a few thousand in the build; {@code -Dstook.stacks=100000} prints what the bench needs. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
class QueueAtScaleTest {
    private static final int STACKS = Integer.getInteger("stook.stacks", 3000);

    @TempDir
    static Path folder;

    private static final TestDatabase DATABASE = TestDatabase.fresh(QueueAtScaleTest.class);

    @Value("${local.server.port}")
    private int port;

    @Autowired
    private Line line;

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.register(registry, DATABASE, folder);
    }

    @Test
    void everyWaitingRunIsOnOnePageInTheOrderOfTheQueue(@Autowired JdbcClient jdbc) {
        Everyone.fill(jdbc);
        SingleConnectionDataSource one =
                new SingleConnectionDataSource(DATABASE.url(), DATABASE.username(), DATABASE.password(), true);
        QueueAtScale.fill(JdbcClient.create(one), STACKS);
        one.destroy();
        java.util.List<Long> seen = new java.util.ArrayList<>();
        String after = "";
        while (after != null) {
            Line.Page page = line.page(Wanted.waiting(null), after);
            page.runs().forEach(run -> seen.add(run.id()));
            after = page.next();
        }
        assertThat(seen)
                .containsExactlyElementsOf(jdbc.sql("select id from stook.run where state = 'READY' order by queued_at")
                        .query(Long.class)
                        .list());
        assertThat(line.page(Wanted.waiting("elsewhere"), "").runs()).isEmpty();
        assertThat(get("/?after=nonsense")).contains("The next 50", "published today");
        System.out.printf(
                "%d stacks, %d waiting: queue page p95 %.0f ms, runs by API %.0f ms, archive search p95 %.0f ms%n",
                STACKS,
                seen.size(),
                QueueAtScale.p95(40, () -> get("/")),
                QueueAtScale.p95(40, () -> get("/api/runs")),
                QueueAtScale.p95(40, () -> get("/archive?text=HC-77")));
    }

    private String get(String path) {
        HttpResponse<String> answer = new Caller(port, "olga").get(path);
        assertThat(answer.statusCode()).isEqualTo(200);
        return answer.body();
    }
}
