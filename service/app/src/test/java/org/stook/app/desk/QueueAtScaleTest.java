package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.jdbc.datasource.SingleConnectionDataSource;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.springframework.transaction.support.TransactionOperations;
import org.stook.app.desk.live.Snapshots;
import org.stook.app.queue.Line;
import org.stook.app.queue.Wanted;
import org.stook.app.stack.Search;
import org.stook.app.stack.TableWord;
import org.stook.app.testing.Caller;
import org.stook.app.testing.Everyone;
import org.stook.app.testing.Migrated;
import org.stook.app.testing.OneStation;
import org.stook.postgres.testing.TestDatabase;

/** The desk over many stacks: a few thousand in the build; {@code -Dstook.stacks=100000} prints how long pages take. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
class QueueAtScaleTest {
    private static final int STACKS = Integer.getInteger("stook.stacks", 3000);

    @TempDir
    static Path folder;

    private static final TestDatabase DATABASE = Migrated.database(QueueAtScaleTest.class);

    @Value("${local.server.port}")
    private int port;

    @Autowired
    private Line line;

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.register(registry, DATABASE, folder);
    }

    @BeforeAll
    static void fill(@Autowired JdbcClient jdbc) {
        Everyone.fill(jdbc);
        SingleConnectionDataSource one =
                new SingleConnectionDataSource(DATABASE.url(), DATABASE.username(), DATABASE.password(), true);
        QueueAtScale.fill(JdbcClient.create(one), STACKS);
        one.destroy();
    }

    /** What open pages ask with every change finds its rows by an index; a search by part of a subject reads each stack once. */
    @Test
    void whatIsAskedAllTheTimeReadsNoTableFromEndToEnd(
            @Autowired JdbcClient jdbc,
            @Autowired TransactionOperations transaction,
            @Autowired Snapshots snapshots,
            @Autowired TableWord words,
            @Autowired Search search) {
        transaction.executeWithoutResult(t -> {
            // Small tables are read whole where they may be: only where there is no other way counts here.
            jdbc.sql("set local enable_seqscan = off").update();
            Map<String, Long> before = readWhole(jdbc);
            snapshots.fingerprint();
            snapshots.progress();
            assertThat(readSince(before, jdbc)).as("beat").isEmpty();
            snapshots.take();
            assertThat(readSince(before, jdbc)).as("snapshot").isEmpty();
            line.page(Wanted.waiting(null), "");
            assertThat(readSince(before, jdbc)).as("page of the queue").isEmpty();
            assertThat(words.latest(1, 6)).hasSize(6);
            assertThat(readSince(before, jdbc)).as("word at the table").isEmpty();
            assertThat(search.find("HC-77").stacks()).isNotEmpty();
            assertThat(search.find("77-").frames()).isNotEmpty();
            assertThat(readSince(before, jdbc))
                    .as("seen by two searches")
                    .allMatch(table -> table.equals("stack " + 2 * STACKS));
        });
    }

    /** Big tables read from end to end since then, and how many of their rows. */
    private static List<String> readSince(Map<String, Long> before, JdbcClient jdbc) {
        return readWhole(jdbc).entrySet().stream()
                .map(table -> Map.entry(table.getKey(), table.getValue() - before.getOrDefault(table.getKey(), 0L)))
                .filter(table -> table.getValue() >= STACKS / 20)
                .map(table -> table.getKey() + " " + table.getValue())
                .toList();
    }

    /** Rows of each table read from end to end, those that the connection has not yet reported of earlier transactions too. */
    private static Map<String, Long> readWhole(JdbcClient jdbc) {
        Map<String, Long> rows = new HashMap<>();
        jdbc.sql("select relname, seq_tup_read from pg_stat_xact_user_tables")
                .query((found, row) -> rows.put(found.getString(1), found.getLong(2)))
                .list();
        return rows;
    }

    @Test
    void everyWaitingRunIsOnOnePageInTheOrderOfTheQueue(@Autowired JdbcClient jdbc) {
        List<Long> seen = new ArrayList<>();
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
        if (Integer.getInteger("stook.stacks") != null) tellTimes(seen.size());
    }

    /** The bench's figures: in the build the machine is not quiet. */
    private void tellTimes(int waiting) {
        System.out.printf(
                "%d stacks, %d waiting: queue page p95 %.0f ms, runs by API %.0f ms, archive search p95 %.0f ms,"
                        + " search %.0f ms, of a file %.0f ms, page at the table %.0f ms%n",
                STACKS,
                waiting,
                QueueAtScale.p95(40, () -> get("/")),
                QueueAtScale.p95(40, () -> get("/api/runs")),
                QueueAtScale.p95(40, () -> get("/archive?text=HC-77")),
                QueueAtScale.p95(40, () -> get("/search?text=hc-77")),
                QueueAtScale.p95(40, () -> get("/api/search?text=77-")),
                QueueAtScale.p95(40, () -> get("/stations/north")));
    }

    private String get(String path) {
        HttpResponse<String> answer = new Caller(port, "olga").get(path);
        assertThat(answer.statusCode()).isEqualTo(200);
        return answer.body();
    }
}
