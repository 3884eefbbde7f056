package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.put;

import com.networknt.schema.InputFormat;
import com.networknt.schema.Schema;
import com.networknt.schema.SchemaRegistry;
import com.networknt.schema.SpecificationVersion;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.stream.StreamSupport;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;
import tools.jackson.databind.JsonNode;
import tools.jackson.databind.json.JsonMapper;
import tools.jackson.databind.node.ObjectNode;

/** What an archivist's program asks. */
class ArchiveApiTest {
    @TempDir
    static Path folder;

    private static ArchiveStage stage;

    @BeforeAll
    static void publish() {
        stage = new ArchiveStage(ArchiveApiTest.class, folder);
        stage.studio.publish("Banded agate", "north", 92, "ACCEPT");
        stage.studio.publish("Pyrite 100%", "south", 71, "LOOK");
        stage.studio.publish("Cone shell", "south", 40, "RESHOOT");
        stage.studio.publish("Banded agate", "north", 95, "ACCEPT");
        stage.jdbc.sql("update stook.run set state = 'SUPERSEDED' where id = 1").update();
    }

    @AfterAll
    static void close() {
        stage.close();
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "subject=agate | 4 1",
                "subject=AGATE&state=published | 4",
                "station=south | 3 2",
                "scoreFrom=71&scoreTo=92 | 2 1",
                "verdict=reshoot | 3",
                "state=SUPERSEDED | 1",
                "text=shell south | 3",
                "text=100% | 2",
                "text=100_ | ''",
                "settings=cdcd | 4 3 2 1",
                "settings=ab | ''",
                "from=2001-01-01&until=2001-12-31 | ''",
                "from=2026-01-01 | 4 3 2 1"
            })
    void findsByWhatIsAsked(String asked, String runs) throws Exception {
        assertThat(runs(json("/api/archive/publications?" + asked).path("items")))
                .isEqualTo(numbers(runs));
    }

    @Test
    void pagesGoOnWhereTheLastOneEnded() throws Exception {
        JsonNode first = json("/api/archive/publications?limit=3");
        assertThat(runs(first.path("items"))).containsExactly(4L, 3L, 2L);
        JsonNode second = json("/api/archive/publications?limit=3&before=" + first.path("next"));
        assertThat(runs(second.path("items"))).containsExactly(1L);
        assertThat(second.path("next").asString(""))
                .as("that was the last page")
                .isEmpty();
    }

    @ParameterizedTest
    @CsvSource({
        "from=yesterday, expected a day",
        "scoreFrom=101, expected a whole number",
        "state=READY, expected one of"
    })
    void aWrongQuestionIsAnsweredWithWhatWasExpected(String asked, String sentence) throws Exception {
        MockHttpServletResponse answer = send(get("/api/archive/publications?" + asked));
        assertThat(answer.getStatus()).isEqualTo(422);
        assertThat(answer.getContentAsString()).contains(sentence);
    }

    @Test
    void whatIsNewComesOnceWhateverTheFilterAndThePage() throws Exception {
        List<Long> agates = new ArrayList<>();
        long cursor = 0;
        for (int i = 0; i < 4; i++) {
            JsonNode answer = json("/api/archive/new?subject=agate&limit=1&after=" + cursor);
            agates.addAll(runs(answer.path("items")));
            cursor = answer.path("next").asLong();
        }
        assertThat(agates).containsExactly(1L, 4L);
        assertThat(cursor).as("beyond those of other subjects, too").isEqualTo(4);
        assertThat(json("/api/archive/new?after=99").path("next").asLong())
                .as("a cursor never goes back")
                .isEqualTo(99);
    }

    @Test
    void aSavedPullKnowsHowFarItsOwnerIs() throws Exception {
        assertThat(send(put("/api/archive/pulls/agates?subject=agate")).getStatus())
                .isEqualTo(200);
        assertThat(runs(json("/api/archive/pulls/agates/new").path("items"))).containsExactly(1L, 4L);
        assertThat(runs(json("/api/archive/pulls/agates/new").path("items")))
                .as("asking moves nothing")
                .containsExactly(1L, 4L);
        assertThat(send(post("/api/archive/pulls/agates/taken?upTo=1")).getStatus())
                .isEqualTo(200);
        assertThat(runs(json("/api/archive/pulls/agates/new").path("items"))).containsExactly(4L);
        send(post("/api/archive/pulls/agates/taken?upTo=4"));
        send(post("/api/archive/pulls/agates/taken?upTo=1"));
        JsonNode pull = json("/api/archive/pulls/agates");
        assertThat(pull.path("taken").asLong()).as("never back").isEqualTo(4);
        assertThat(pull.path("waiting").asLong()).isZero();
        assertThat(send(post("/api/archive/pulls/agates/taken?upTo=5")).getStatus())
                .isEqualTo(422);
        assertThat(send(get("/api/archive/pulls/none")).getStatus()).isEqualTo(404);
        assertThat(send(put(URI.create("/api/archive/pulls/A%20b"))).getStatus())
                .isEqualTo(422);
    }

    @Test
    void filesAreServedByTheirKind() throws Exception {
        assertThat(send(get("/api/archive/publications/2/files/master")).getContentType())
                .isEqualTo("image/tiff");
        assertThat(send(get("/api/archive/publications/2/files/derivative")).getContentAsString())
                .isEqualTo("derivative");
        assertThat(send(get("/api/archive/publications/2/files/poem")).getStatus())
                .isEqualTo(404);
    }

    @Test
    void theManifestOfASubjectKeepsToTheSchema() throws Exception {
        MockHttpServletResponse answer = send(get(URI.create("/iiif/subjects/Pyrite%20100%25/manifest.json")));
        assertThat(answer.getStatus()).isEqualTo(200);
        assertThat(answer.getContentType())
                .startsWith("application/ld+json;profile=\"http://iiif.io/api/presentation/3/");
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_2020_12)
                .getSchema(
                        ArchiveApiTest.class.getResourceAsStream("/iiif-presentation-3-manifest.schema.json"),
                        InputFormat.JSON);
        String manifest = answer.getContentAsString(StandardCharsets.UTF_8);
        assertThat(schema.validate(manifest, InputFormat.JSON)).isEmpty();
        assertThat(schema.validate(manifest.replace("\"Canvas\"", "\"Sheet\""), InputFormat.JSON))
                .as("the schema is no sieve")
                .isNotEmpty();
        JsonNode canvas = JsonMapper.shared().readTree(manifest).path("items").path(0);
        assertThat(canvas.path("width").asInt()).isEqualTo(1200);
        assertThat(canvas.at("/items/0/items/0/target").asString())
                .isEqualTo(canvas.path("id").asString());
        assertThat(send(get("/iiif/subjects/nobody/manifest.json")).getStatus()).isEqualTo(404);
    }

    /** The schema that the validator of the IIIF consortium uses, iiif_3_0.json; JSON Schema draft 7. */
    @Test
    @Tag("published-data")
    void manifestsAreValidUnderThePublishedSchema() throws Exception {
        ObjectNode published = (ObjectNode) JsonMapper.shared()
                .readTree(PublishedSchemas.find("iiif_3_0.json").toFile());
        // It names no draft, only "the newest", and an address at which it does not lie.
        published.remove(List.of("$schema", "$id"));
        Schema schema = SchemaRegistry.withDefaultDialect(SpecificationVersion.DRAFT_7)
                .getSchema(published.toString(), InputFormat.JSON);
        for (String subject : List.of("Pyrite%20100%25", "Cone%20shell", "Banded%20agate")) {
            String manifest = send(get(URI.create("/iiif/subjects/" + subject + "/manifest.json")))
                    .getContentAsString(StandardCharsets.UTF_8);
            assertThat(schema.validate(manifest, InputFormat.JSON)).isEmpty();
            assertThat(schema.validate(manifest.replace("\"Canvas\"", "\"Sheet\""), InputFormat.JSON))
                    .as("the schema is no sieve")
                    .isNotEmpty();
        }
    }

    /** IIIF Image API 3.0: the address in info.json is where it is served; compliance level 0 needs no more than files. */
    @Test
    void tilesAreServedUnderTheAddressThatTheManifestNames() throws Exception {
        JsonNode manifest = json("/iiif/subjects/Cone%20shell/manifest.json");
        String service =
                manifest.at("/items/0/items/0/items/0/body/service/0/id").asString();
        JsonNode info = json(URI.create(service).getPath() + "/info.json");
        assertThat(info.path("id").asString()).isEqualTo(service);
        String tiles = URI.create(service).getPath();
        assertThat(send(get(tiles + "/0,0,512,512/512,512/0/default.jpg")).getContentAsString())
                .isEqualTo("a tile");
        assertThat(send(get(tiles + "/0,0,9,9/512,512/0/default.jpg")).getStatus())
                .isEqualTo(404);
        assertThat(send(get(URI.create(tiles + "/..%2F..%2Fx/512,512/0/default.jpg")))
                        .getStatus())
                .isEqualTo(404);
    }

    @Test
    void aManifestShowsOnlyWhatIsNotSuperseded() throws Exception {
        assertThat(json("/iiif/subjects/Banded%20agate/manifest.json").path("items"))
                .hasSize(1);
    }

    private static List<Long> numbers(String text) {
        return text.isEmpty()
                ? List.of()
                : Arrays.stream(text.split(" ")).map(Long::valueOf).toList();
    }

    private static List<Long> runs(JsonNode items) {
        return StreamSupport.stream(items.spliterator(), false)
                .map(i -> i.path("runId").asLong())
                .toList();
    }

    private static JsonNode json(String address) throws Exception {
        String encoded = address.replaceAll("%(?![0-9])", "%25").replace(" ", "%20");
        MockHttpServletResponse answer = send(get(URI.create(encoded)));
        assertThat(answer.getStatus()).isEqualTo(200);
        return JsonMapper.shared().readTree(answer.getContentAsString(StandardCharsets.UTF_8));
    }

    private static MockHttpServletResponse send(MockHttpServletRequestBuilder request) throws Exception {
        return stage.web.perform(request.principal(() -> "ada")).andReturn().getResponse();
    }
}
