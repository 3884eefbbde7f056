package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.awt.image.BufferedImage;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import javax.imageio.ImageIO;
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
import org.stook.app.testing.Migrated;
import org.stook.app.testing.OneStation;

/** The review of a composite over a real port. */
@SpringBootTest(
        webEnvironment = SpringBootTest.WebEnvironment.RANDOM_PORT,
        properties = {"stook.recurring=false", "stook.zone=UTC"})
class ReviewTest {
    @TempDir
    static Path folder;

    @Value("${local.server.port}")
    private int port;

    @Autowired
    private JdbcClient jdbc;

    @DynamicPropertySource
    static void studio(DynamicPropertyRegistry registry) {
        OneStation.register(registry, Migrated.database(ReviewTest.class), folder);
    }

    @BeforeAll
    static void fill(@Autowired JdbcClient jdbc, @Autowired Sealing sealing) throws IOException {
        Reviewable.fill(jdbc, sealing, folder);
    }

    @Test
    void thePageShowsTheCompositeItsFramesTheSweepAndASettingsForm() {
        String page = get("/stacks/1").body();
        assertThat(page)
                .contains("data-tiles=\"/runs/1/tiles/\"", "data-width=\"300\"", "26.5 % of the frame were cut off")
                .contains("M0 0h1v1h-1z", "7.tif: is black", "may end inside the subject: 9 %")
                .contains("The same in numbers", "Order the run", "Why it goes back")
                .doesNotContain("style=", "<script>");
    }

    @Test
    void aTouchedPlaceNamesItsFrameAndShowsItsNeighbours() {
        assertThat(get("/runs/1/point?x=10&y=10").body())
                .contains(
                        "1.tif", "frame <span class=\"figure\">2</span> of", "Sharpest at 2.3 of 4", "0.tif", "2.tif");
        assertThat(get("/runs/1/point?x=200&y=199").body())
                .contains("2.tif", "No frame shows enough detail", "taken from the frame by hand");
        assertThat(get("/api/runs/1/point?x=10&y=10").body()).contains("\"file\":\"1.tif\"", "\"rank\":1");
        assertThat(get("/runs/2/point?x=1&y=1").statusCode()).isEqualTo(404);
    }

    @Test
    void picturesComeFromTheRunAndNowhereElse() throws IOException {
        assertThat(picture("/runs/1/tiles/0,0,300,200/300,200/0/default.jpg").getWidth())
                .isEqualTo(300);
        assertThat(picture("/runs/1/layers/doubt.png").getRGB(6, 199) >>> 24).isEqualTo(255);
        assertThat(picture("/runs/1/layers/depth.png").getRGB(200, 5) >>> 24).isZero();
        BufferedImage small = picture("/runs/1/frames/2/part.jpg?x=150&y=100&side=64");
        BufferedImage exact = picture("/runs/1/frames/2/part.jpg?x=150&y=100&side=64&exact=true");
        assertThat(exact.getWidth()).isEqualTo(64).isEqualTo(small.getWidth());
        assertThat(exact.getRGB(30, 30) >> 16 & 0xFF).isBetween(115, 125);
        assertThat(get("/runs/1/tiles/../1/0/default.jpg").statusCode()).isNotEqualTo(200);
        assertThat(get("/runs/1/tiles/%2e%2e/%2e%2e/0/default.jpg").statusCode())
                .isNotEqualTo(200);
        assertThat(get("/runs/1/layers/secret.png").statusCode()).isEqualTo(404);
    }

    @Test
    void tonesAreTriedByTheWorkersOwnCode() throws IOException {
        int plain = picture("/stacks/1/tones.jpg?frame=1.tif").getRGB(9, 9) >> 8 & 0xFF;
        int darker = picture("/stacks/1/tones.jpg?frame=1.tif&exposureEv=-1").getRGB(9, 9) >> 8 & 0xFF;
        // sRGB code 120 is 0.1878 of white's light; half of it is code 86 (IEC 61966-2-1).
        assertThat(plain).isBetween(119, 121);
        assertThat(darker).isBetween(85, 87);
        assertThat(get("/stacks/1/tones.jpg?frame=1.tif&exposureEv=99").statusCode())
                .isEqualTo(422);
        assertThat(get("/stacks/1/tones.jpg?frame=gone.tif").statusCode()).isEqualTo(404);
    }

    @Test
    void aPersonSendsBackWithAReasonAndAcceptsAndTheTrailKeepsBoth() {
        assertThat(post("/api/runs/1/send-back", "{\"reason\": \" \"}").statusCode())
                .isEqualTo(422);
        assertThat(post("/api/runs/1/send-back", "{\"reason\": \"halo at the rim\"}")
                        .body())
                .contains("\"accepted\":false");
        assertThat(get("/stacks/1").body()).contains("halo at the rim", "sent back");
        assertThat(post("/api/runs/1/accept", "").body()).contains("\"accepted\":true");
        assertThat(post("/api/runs/2/accept", "").statusCode()).isEqualTo(409);
        assertThat(trail("run/1"))
                .contains("run.SENT-BACK {\"reason\": \"halo at the rim\"", "run.ACCEPTED {\"sha256\"");
    }

    @Test
    void aRunWithARegionTakenByHandIsOrderedOnceAndDisclosed() {
        String settings = """
                {"tone": {"exposureEv": 0.25},
                 "overrides": [{"outline": [[30, 30], [90, 30], [90, 80]], "frame": "2.tif", "feather": 8}]}""";
        String first = post("/api/stacks/1/runs?note=rim", settings).body();
        assertThat(first).contains("\"state\":\"READY\"");
        assertThat(post("/api/stacks/1/runs", settings).body()).isEqualTo(first);
        String run = first.replaceAll(".*?\"id\":(\\d+).*", "$1");
        assertThat(trail("run/" + run)).contains("run.SETTINGS", "\"outline\"", "\"reason\": \"rim\"", "\"2.tif\"");
        assertThat(jdbc.sql("select t.body::text || t.id from stook.run r join stook.tone_settings t"
                                + " on t.id = r.settings_id where r.id = cast(? as bigint)")
                        .param(run)
                        .query(String.class)
                        .single())
                .contains("\"overrides\"", "0.25");
        assertThat(post("/api/stacks/1/runs", "{\"blend\": \"magic\"}").body()).contains("no blend method 'magic'");
    }

    @Test
    void thePageOrdersARunWithWhatItsFieldsSay() {
        HttpResponse<String> answer = olga().send(olga().request("/stacks/1/runs")
                .header("Content-Type", "application/x-www-form-urlencoded")
                .POST(HttpRequest.BodyPublishers.ofString("base=1&exposureEv=0.5&saturation=1&note=brighter")));
        assertThat(answer.statusCode()).isEqualTo(302);
        assertThat(jdbc.sql("select t.body::text from stook.run r join stook.tone_settings t on t.id = r.settings_id"
                                + " where r.stack_id = 1 and t.body->'tone'->>'exposureEv' = '0.5'")
                        .query(String.class)
                        .list())
                .containsExactly("{\"tone\": {\"exposureEv\": 0.5}}");
    }

    private String trail(String subject) {
        return jdbc.sql("select string_agg(kind || ' ' || body::text, ' | ' order by id) from stook.audit_entry"
                        + " where subject = ?")
                .param(subject)
                .query(String.class)
                .single();
    }

    private BufferedImage picture(String path) throws IOException {
        HttpResponse<byte[]> answer = olga().send(olga().request(path), HttpResponse.BodyHandlers.ofByteArray());
        assertThat(answer.statusCode()).as(path).isEqualTo(200);
        assertThat(answer.headers().firstValue("Cache-Control").orElse("")).contains("private", "immutable");
        return ImageIO.read(new ByteArrayInputStream(answer.body()));
    }

    private Caller olga() {
        return new Caller(port, "olga");
    }

    private HttpResponse<String> get(String path) {
        return olga().get(path);
    }

    private HttpResponse<String> post(String path, String json) {
        return olga().send(olga().request(path)
                .header("Content-Type", "application/json")
                .POST(HttpRequest.BodyPublishers.ofString(json)));
    }
}
