package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.springframework.beans.factory.annotation.Autowired;
import org.springframework.beans.factory.annotation.Value;
import org.springframework.boot.test.context.SpringBootTest;
import org.springframework.jdbc.core.simple.JdbcClient;
import org.springframework.test.context.DynamicPropertyRegistry;
import org.springframework.test.context.DynamicPropertySource;
import org.stook.app.stack.Sealing;
import org.stook.app.testing.Caller;
import org.stook.app.testing.Everyone;
import org.stook.app.testing.OneStation;
import org.stook.postgres.testing.TestDatabase;

/** The whole service over a real port; its recurring work stands still. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
class DeskTest {
    @TempDir
    static Path folder;

    private static boolean filled;

    @Value("${local.server.port}")
    private int port;

    @Autowired
    private JdbcClient jdbc;

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.register(registry, TestDatabase.fresh(DeskTest.class), folder);
    }

    @BeforeAll
    static void fill(@Autowired JdbcClient jdbc, @Autowired Sealing sealing) throws IOException {
        Demo.fill(jdbc, sealing);
        Everyone.fill(jdbc);
        Path preview = folder.resolve("published/agate/1.preview.jpg");
        Files.createDirectories(preview.getParent());
        Files.write(preview, new byte[] {1, 2, 3});
        Files.writeString(preview.resolveSibling("1.json"), """
                {"frames": [{"role": "stray", "reason": "7.tif: is black"}, {"role": "blended", "reason": ""}]}""");
        filled = true;
    }

    @Test
    void theQueuePageShowsWhatRunsWaitsNeedsAPersonAndWasPublished() {
        assertThat(filled).isTrue();
        HttpResponse<String> page = get("/");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body())
                .contains(
                        "Banded agate", "Accept", "registration", "42 %", "Fluorite", "Retry", "frame 3 is out of line")
                .contains("/webjars/htmx.org/")
                .doesNotContain("<script>", "style=");
        assertThat(page.headers().firstValue("Content-Security-Policy").orElse(""))
                .startsWith("default-src 'none'");
        assertThat(page.body().split("/stacks/2/on-table", -1))
                .as("one such button")
                .hasSize(2);
    }

    @Test
    void theStackPageShowsFramesScoreAndHistory() {
        assertThat(get("/stacks/1").body())
                .contains(
                        "Banded agate",
                        "0.tif",
                        "in the sweep",
                        "Sharp from front to back.",
                        "96",
                        "Accept",
                        "7.tif: is black",
                        "History");
        assertThat(get("/stacks/99").statusCode()).isEqualTo(404);
        assertThat(get("/stacks/99").body()).contains("There is no stack 99.");
    }

    @Test
    void theApiAnswersInJsonAndRefusesWithProblemDetails() {
        assertThat(get("/api/stacks/1").body()).contains("\"subject\":\"Banded agate\"", "\"verdict\":\"ACCEPT\"");
        assertThat(get("/api/publications").body()).contains("\"runId\":1");
        HttpResponse<String> none = get("/api/runs/99");
        assertThat(none.statusCode()).isEqualTo(404);
        assertThat(none.headers().firstValue("Content-Type")).contains("application/problem+json");
        assertThat(none.body()).contains("\"detail\":\"there is no run 99\"");
        assertThat(post("/api/runs/1/hold").statusCode()).isEqualTo(409);
    }

    @Test
    void aRunIsHeldAndReleasedAndAStackPutOnTheTable() {
        assertThat(post("/api/runs/2/hold").body()).contains("\"state\":\"HELD\"");
        assertThat(post("/api/runs/2/release").body()).contains("\"state\":\"READY\"");
        assertThat(post("/api/stacks/2/on-table?value=true").body()).contains("\"onTable\":true");
        assertThat(get("/api/runs/2").body()).contains("\"priority\":100");
    }

    @Test
    void oneOrderForManyRunsIsAnEntryForEachAndSaysWhichRefused() {
        String answer = post("/api/runs", "{\"run\": [2, 1, 99], \"order\": \"hold\"}");
        assertThat(answer).contains("\"done\":[2]", "run 1 is published", "there is no run 99");
        assertThat(get("/api/runs?state=held").body())
                .contains("Balance wheel 12")
                .doesNotContain("Fluorite");
        assertThat(get("/?person=true").body()).contains("Balance wheel 12", "Fluorite", "Runs that were asked for");
        assertThat(get("/?priority=lots").body()).contains("priority: found &#39;lots&#39;, expected a whole number");
        assertThat(post("/api/runs", "{\"run\": [2], \"order\": \"priority\", \"priority\": 70}"))
                .contains("[2]");
        assertThat(get("/api/runs/2").body()).contains("\"priority\":70");
        HttpResponse<String> released = form("/runs", "run=2&order=release&back=%2F%2Felsewhere.example");
        assertThat(released.headers().firstValue("Location").orElse("")).endsWith(":" + port + "/");
        assertThat(jdbc.sql("select kind from stook.audit_entry where subject = 'run/2' order by id desc limit 3")
                        .query(String.class)
                        .list())
                .containsExactly("run.HELD-READY", "run.PRIORITY", "run.READY-HELD");
        assertThat(get("/api/runs?text=WHEEL&priority=60&from=2026-01-01").body())
                .contains("Balance wheel 12");
        assertThat(get("/api/runs?table=true&state=any&text=wheel").body()).contains("\"runs\":[");
        post("/api/runs", "{\"run\": [2], \"order\": \"priority\", \"priority\": 50}");
    }

    @Test
    void whatWasSentBackNeedsAPersonUntilItIsMadeAgain() {
        assertThat(post("/api/runs/1/send-back", "{\"reason\": \"halo at the rim\"}"))
                .contains("halo at the rim");
        assertThat(get("/").body()).contains("sent back", "halo at the rim", "Make it again");
        assertThat(post("/api/runs/1/accept").statusCode()).isEqualTo(200);
        assertThat(get("/").body()).doesNotContain("halo at the rim");
    }

    @Test
    void theTableHearsWhetherTheSweepIsWholeOrWhatIsMissing() {
        assertThat(get("/stations/north").body()).contains("Sealed", "Fluorite", "station.js", "Sound is off");
        jdbc.sql("update stook.stack set word = cast(? as jsonb) where id = 4")
                .param("""
                        {"whole": false, "frames": 4, "faults": [{"kind": "GAP", "sentence": "gap between 1.tif and 2.tif"}]}""")
                .update();
        assertThat(get("/stations/north/word").body()).contains("Not whole", "Gap between 1.tif and 2.tif");
        assertThat(get("/api/stations/north/word").body()).contains("\"mood\":\"MISSING\"");
        assertThat(get("/stations/south").statusCode()).isEqualTo(404);
    }

    @Test
    void settingsAreChangedOnThePageAndByApiAndAWrongOneIsRefusedWithTheReason() {
        assertThat(get("/stations/north/settings").body()).contains("subfolder", "No version yet");
        assertThat(put("/api/stations/north/settings", "{\"priority\": 700}").statusCode())
                .isEqualTo(422);
        assertThat(put("/api/stations/north/settings", "{\"priority\": 700}").body())
                .contains("priority: found 700, expected a number from 0 to 100");
        assertThat(put("/api/stations/north/settings", "{\"priority\": 60}").body())
                .contains("\"settingsVersion\":1");
        String form =
                "folders=stack&slates=first&gapSeconds=30&framing=true&exposure=true&settleSeconds=2&quietSeconds=10"
                        + "&graceSeconds=60&recipe={}&roles=subject+%3D+HC-%5B0-9%5D%2B&priority=";
        HttpResponse<String> refused = form("/stations/north/settings", form + "lots");
        assertThat(refused.statusCode()).isEqualTo(422);
        assertThat(refused.body()).contains("priority: found &quot;lots&quot;", "HC-[0-9]+");
        assertThat(form("/stations/north/settings", form + "60").statusCode()).isEqualTo(302);
        assertThat(get("/api/stations/north/settings").body()).contains("\"slates\": \"first\"");
    }

    @Test
    void aStackThatAsksIsNamedOnThePage() {
        jdbc.sql(
                        "insert into stook.stack (station_id, subject, question) values (1, 'north 09.00', 'the label on 1.jpg could not"
                                + " be read: which subject is it?')")
                .update();
        long id = jdbc.sql("select max(id) from stook.stack").query(Long.class).single();
        assertThat(get("/").body()).contains("The label on 1.jpg could not be read");
        assertThat(post("/api/stacks/" + id + "/seal").statusCode()).isEqualTo(409);
        assertThat(form("/stacks/" + id + "/name", "subject=HC-12&view=dorsal&stack=" + id)
                        .statusCode())
                .isEqualTo(302);
        assertThat(get("/api/stacks/" + id).body()).contains("\"subject\":\"HC-12\"", "\"view\":\"dorsal\"");
        jdbc.sql("update stook.stack set state = 'ASIDE' where id = ?")
                .param(id)
                .update();
    }

    @Test
    void aPostFromAnotherSiteIsRefused() {
        assertThat(post("/runs/2/cancel", "Origin", "http://elsewhere.example").statusCode())
                .isEqualTo(403);
        assertThat(post("/runs/2/cancel", "Sec-Fetch-Site", "cross-site").statusCode())
                .isEqualTo(403);
        assertThat(post("/runs/2/cancel", "Origin", "null").statusCode()).isEqualTo(403);
        assertThat(post("/stacks/2/on-table?value=false", "Origin", "http://127.0.0.1:" + port)
                        .statusCode())
                .isEqualTo(302);
    }

    @Test
    void previewsAndHealthAreServed() {
        assertThat(get("/previews/1").headers().firstValue("Content-Type")).contains("image/jpeg");
        assertThat(get("/previews/2").statusCode()).isEqualTo(404);
        assertThat(get("/actuator/health").body()).contains("UP");
        assertThat(get("/webjars/htmx-ext-sse/sse.js").statusCode()).isEqualTo(200);
        assertThat(get("/webjars/htmx.org/dist/htmx.min.js").statusCode()).isEqualTo(200);
    }

    private Caller olga() {
        return new Caller(port, "olga");
    }

    private HttpResponse<String> get(String path) {
        return olga().get(path);
    }

    private HttpResponse<String> post(String path, String... headers) {
        var request = olga().request(path).POST(HttpRequest.BodyPublishers.noBody());
        if (headers.length > 0) {
            request.headers(headers);
        }
        return olga().send(request);
    }

    private String post(String path, String json) {
        return olga().send(olga().request(path)
                        .POST(HttpRequest.BodyPublishers.ofString(json))
                        .header("Content-Type", "application/json"))
                .body();
    }

    private HttpResponse<String> put(String path, String json) {
        return olga().send(olga().request(path)
                .PUT(HttpRequest.BodyPublishers.ofString(json))
                .header("Content-Type", "application/json"));
    }

    private HttpResponse<String> form(String path, String fields) {
        return olga().send(olga().request(path)
                .POST(HttpRequest.BodyPublishers.ofString(fields))
                .header("Content-Type", "application/x-www-form-urlencoded"));
    }

    @Test
    void whatIsKeptHasItsPage() throws Exception {
        HttpResponse<String> page = get("/keeping");
        assertThat(page.statusCode()).isEqualTo(200);
        assertThat(page.body())
                .contains(
                        "No damaged file is known", "Only superseded publications of stations with a retention policy");
        assertThat(form("/stations/nowhere/retention", "supersededDays=30").statusCode())
                .isEqualTo(404);
    }
}
