package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.http.HttpResponse;
import org.junit.jupiter.api.Test;
import org.stook.app.testing.Caller;

/** The pages, over a real port. */
class DeskTest extends DeskStage {
    @Test
    void theQueuePageShowsWhatRunsWaitsNeedsAPersonAndWasPublished() {
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

    /** The parts of a page are the same for all, so its head says what the style sheet may show of their buttons. */
    @Test
    void everybodySeesTheButtonsOfTheirRoleAlone() {
        assertThat(get("/").body()).contains("at-tables orders", "button order", "button at-table");
        String ofPim = new Caller(port, "pim").get("/").body();
        assertThat(ofPim).contains("class=\"top at-tables\"").doesNotContain("at-tables orders");
        assertThat(new Caller(port, "arno").get("/").body()).contains("class=\"top\"");
        assertThat(new Caller(port, "pim").get("/stations/north/settings").body())
                .contains("you may read them")
                .doesNotContain("Save as a new version");
        assertThat(new Caller(port, "pim").get("/archive").body()).doesNotContain("Make one bag of all");
        assertThat(new Caller(port, "arno").get("/archive").body()).contains("Make one bag of all");
    }

    @Test
    void aRunIsHeldAndReleasedAndAStackPutOnTheTable() {
        assertThat(post("/api/runs/2/hold").body()).contains("\"state\":\"HELD\"");
        assertThat(post("/api/runs/2/release").body()).contains("\"state\":\"READY\"");
        assertThat(post("/api/stacks/2/on-table?value=true").body()).contains("\"onTable\":true");
        assertThat(get("/api/runs/2").body()).contains("\"priority\":100");
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
        assertThat(get("/stations/north").body()).contains("Not whole", "Gap between 1.tif and 2.tif");
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

    @Test
    void thingsAreFoundByWhatAPersonKnowsOfThem() {
        assertThat(get("/search?text=wheel").body())
                .contains("Balance wheel 12")
                .doesNotContain("Fluorite");
        assertThat(get("/search?text=0.TIF").body()).contains("Fluorite/0.tif", "taken in");
        assertThat(get("/search?text=abababab").body()).contains("Banded agate, run 1");
        assertThat(get("/search?text=%25").body()).contains("Nothing is called so");
        assertThat(get("/api/search?text=nor").body()).contains("\"stations\":[\"north\"]");
    }

    @Test
    void workersSharesAndTonesHavePagesAndJson() {
        assertThat(get("/workers").body()).contains("north-pc", "Pyrite cube", "registration");
        assertThat(get("/api/workers").body()).contains("\"host\":\"north-pc\"");
        jdbc.sql("update stook.share set state = 'FULL', state_text = 'no room' where kind = 'PUBLISH'")
                .update();
        assertThat(get("/shares").body()).contains("No room", "Make room on it");
        jdbc.sql("update stook.share set state = 'OK', state_text = null").update();
        String used = jdbc.sql("select settings_id from stook.run where id = 1")
                .query(String.class)
                .single();
        jdbc.sql(
                        "insert into stook.tone_settings (id, body) values (repeat('d', 64), '{\"tone\": {\"contrast\": 0.2}}') on conflict do nothing")
                .update();
        assertThat(get("/tones").body()).contains(used.substring(0, 12));
        assertThat(get("/tones/" + used).body()).contains("Banded agate");
        assertThat(get("/tones/compare?left=" + used + "&right=" + "d".repeat(64))
                        .body())
                .contains("tone.contrast", "0.2", "as usual");
        assertThat(get("/api/tones/" + "d".repeat(64)).body()).contains("\"tone.contrast\":\"0.2\"");
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

    @Test
    void aStationsRetentionIsDecidedByApiInVersions() throws Exception {
        String path = "/api/stations/north/retention";
        assertThat(get(path).body()).isEqualTo("[]");
        assertThat(put(path, "{\"supersededDays\": 90, \"note\": \"room\"}").body())
                .contains("\"version\":1", "\"supersededDays\":90", "\"graceDays\":30", "\"by\":\"olga\"");
        assertThat(put(path, "{}").body()).contains("\"version\":2").doesNotContain("\"supersededDays\":90");
        assertThat(put(path, "{\"graceDays\": 0}").statusCode()).isEqualTo(422);
        assertThat(put("/api/stations/nowhere/retention", "{}").statusCode()).isEqualTo(404);
        assertThat(get("/api/keeping/removals").body()).isEqualTo("[]");
    }
}
