package org.stook.app.desk;

import static org.assertj.core.api.Assertions.assertThat;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.get;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.head;
import static org.springframework.test.web.servlet.request.MockMvcRequestBuilders.post;

import gov.loc.repository.bagit.reader.BagReader;
import gov.loc.repository.bagit.verify.BagVerifier;
import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.regex.Pattern;
import javax.xml.transform.stream.StreamSource;
import javax.xml.validation.Schema;
import javax.xml.validation.SchemaFactory;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.springframework.mock.web.MockHttpServletResponse;
import org.springframework.test.web.servlet.request.MockHttpServletRequestBuilder;

/** Bags as they leave the house, judged by tar, sha512sum, the Library of Congress's BagIt library and the PREMIS schema. */
class BagApiTest {
    private static final Pattern LOCATION = Pattern.compile("<contentLocationValue>([^<]*)</contentLocationValue>");

    @TempDir
    static Path folder;

    private static ArchiveStage stage;
    private static long run;

    @BeforeAll
    static void publish() {
        stage = new ArchiveStage(BagApiTest.class, folder.resolve("studio"));
        run = stage.studio.publish("Fluorite <7> & friends", 91);
    }

    @AfterAll
    static void close() {
        stage.close();
    }

    @ParameterizedTest
    @CsvSource({"named, 8", "included, 11"})
    void aBagIsWholeInTheEyesOfOthers(String frames, int files, @TempDir Path out) throws Exception {
        Path bag = unpack(ok(get(address(run) + "?frames=" + frames)), out);
        assertThat(bag.getFileName()).hasToString("stook-run-" + run);
        assertThat(command(bag, "sha512sum", "--strict", "-c", "manifest-sha512.txt")
                        .lines())
                .hasSize(files)
                .allSatisfy(line -> assertThat(line).endsWith(": OK"));
        command(bag, "sha512sum", "--strict", "-c", "tagmanifest-sha512.txt");
        try (BagVerifier verifier = new BagVerifier()) {
            verifier.isValid(new BagReader().read(bag), false);
        }
        assertThat(Files.readString(bag.resolve("bag-info.txt"))).contains("Payload-Oxum: ", "." + files + "\n");
        judge(bag, SchemaFactory.newDefaultInstance().newSchema(BagApiTest.class.getResource("/premis-3-subset.xsd")));
    }

    /** The schema of the Library of Congress, premis-v3-0.xsd of 18 January 2016. */
    @Test
    @Tag("published-data")
    void whatWasDoneIsValidUnderThePublishedSchema(@TempDir Path out) throws Exception {
        File schema = PublishedSchemas.find("premis-v3-0.xsd").toFile();
        Path bag = unpack(ok(get(address(run) + "?frames=included")), out);
        judge(bag, SchemaFactory.newDefaultInstance().newSchema(schema));
    }

    private static void judge(Path bag, Schema premis) throws Exception {
        premis.newValidator()
                .validate(new StreamSource(bag.resolve("data/premis.xml").toFile()));
    }

    @Test
    void whatWasDoneAndByWhomIsInIt(@TempDir Path out) throws Exception {
        Path bag = unpack(ok(get(address(run) + "?frames=included")), out);
        assertThat(Files.readString(bag.resolve("data/premis.xml")))
                .contains(
                        "<eventType>capture</eventType><eventDateTime>2026-03-02T09:00:00/2026-03-02T09:00:02",
                        "run.PUBLISHING-PUBLISHED",
                        "<eventOutcome>ACCEPT</eventOutcome>",
                        "Sharp &lt;from&gt; front to back.",
                        "data/frames/0001-_0001.jpg",
                        "<agentVersion>0.1.0</agentVersion>");
        assertThat(Files.readAllLines(bag.resolve("data/audit.jsonl")))
                .hasSizeGreaterThan(3)
                .allSatisfy(line -> assertThat(line).startsWith("{\"id\":").endsWith("}"));
        assertThat(bag.resolve("data/audit-proof.json")).content().contains("run.PUBLISHING-PUBLISHED");
        assertThat(bag.resolve("data/frames/0002-_0002.jpg")).hasContent("frame 1 of " + stack());
    }

    private static long stack() {
        return stage.jdbc
                .sql("select stack_id from stook.publication where run_id = ?")
                .param(run)
                .query(Long.class)
                .single();
    }

    @Test
    void framesToBeFetchedAreListedWithTheirHashesAndServed(@TempDir Path out) throws Exception {
        Path bag = unpack(ok(get(address(run) + "?frames=fetch")), out);
        List<String> lines = Files.readAllLines(bag.resolve("fetch.txt"));
        assertThat(lines).hasSize(3);
        String[] first = lines.get(0).split(" ");
        assertThat(first[2]).isEqualTo("data/frames/0001-_0001.jpg");
        byte[] frame = ok(get(first[0])).getContentAsByteArray();
        assertThat(frame).hasSize(Integer.parseInt(first[1]));
        Files.createDirectories(bag.resolve("data/frames"));
        for (String line : lines) {
            String[] parts = line.split(" ");
            Files.write(bag.resolve(parts[2]), ok(get(parts[0])).getContentAsByteArray());
        }
        command(bag, "sha512sum", "--strict", "-c", "manifest-sha512.txt");
    }

    @ParameterizedTest
    @ValueSource(strings = {"0-0", "0-511", "500-700", "1000-", "-1500", "3000-9000", "700-700", "511-512"})
    void everyRangeIsThatPartOfTheWhole(String range) throws Exception {
        MockHttpServletResponse whole = ok(get(address(run)));
        byte[] all = whole.getContentAsByteArray();
        assertThat(whole.getContentLengthLong()).isEqualTo(all.length);
        MockHttpServletResponse part = send(get(address(run)).header("Range", "bytes=" + range));
        assertThat(part.getStatus()).isEqualTo(206);
        assertThat(part.getHeader("ETag")).isEqualTo(whole.getHeader("ETag"));
        String[] ends = range.split("-", -1);
        int from = ends[0].isEmpty() ? all.length - Integer.parseInt(ends[1]) : Integer.parseInt(ends[0]);
        int to = ends[0].isEmpty() || ends[1].isEmpty()
                ? all.length
                : Math.min(all.length, Integer.parseInt(ends[1]) + 1);
        assertThat(part.getHeader("Content-Range")).isEqualTo("bytes %d-%d/%d".formatted(from, to - 1, all.length));
        assertThat(part.getContentAsByteArray()).isEqualTo(Arrays.copyOfRange(all, from, to));
    }

    /** RFC 9110: section 13.1.5 for If-Range, 13.1.2 for If-None-Match, 14.2 for what cannot be had or understood. */
    @Test
    void keepsToTheRulesForParts() throws Exception {
        MockHttpServletResponse whole = ok(get(address(run)));
        String etag = String.valueOf(whole.getHeader("ETag"));
        assertThat(send(get(address(run)).header("Range", "bytes=5-").header("If-Range", etag))
                        .getStatus())
                .isEqualTo(206);
        assertThat(send(get(address(run)).header("Range", "bytes=5-").header("If-Range", "\"other\""))
                        .getStatus())
                .isEqualTo(200);
        assertThat(send(get(address(run)).header("If-None-Match", etag)).getStatus())
                .isEqualTo(304);
        MockHttpServletResponse beyond = send(get(address(run)).header("Range", "bytes=99999999-"));
        assertThat(beyond.getStatus()).isEqualTo(416);
        assertThat(beyond.getContentType()).isEqualTo("application/problem+json");
        assertThat(beyond.getHeader("Content-Range")).isEqualTo("bytes */" + whole.getContentLengthLong());
        assertThat(send(get(address(run)).header("Range", "lines=1-2")).getStatus())
                .isEqualTo(200);
        MockHttpServletResponse head = ok(head(address(run)));
        assertThat(head.getContentLengthLong()).isEqualTo(whole.getContentLengthLong());
        assertThat(head.getContentAsByteArray()).isEmpty();
    }

    @Test
    void theSameBagHasTheSameBytesUntilSomethingIsDoneWithTheStack() throws Exception {
        long agate = stage.studio.publish("Banded agate", 70);
        byte[] first = ok(get(address(agate))).getContentAsByteArray();
        assertThat(ok(get(address(agate))).getContentAsByteArray()).isEqualTo(first);
        stage.jdbc
                .sql("update stook.run set state = 'SUPERSEDED' where id = ?")
                .param(agate)
                .update();
        assertThat(ok(get(address(agate))).getContentAsByteArray())
                .as("the audit trail goes on")
                .isNotEqualTo(first);
    }

    @Test
    void aDamagedFileIsNamedAndNotHandedOut() throws Exception {
        long shell = stage.studio.publish("Cone shell", 88);
        Files.writeString(stage.studio.master(shell), "x", java.nio.file.StandardOpenOption.APPEND);
        MockHttpServletResponse answer = send(get(address(shell)));
        assertThat(answer.getStatus()).isEqualTo(409);
        assertThat(answer.getContentAsString()).contains("is damaged: its SHA-256 is", "-abab.tif");
    }

    @Test
    void aFileThatChangesAfterwardsBreaksTheTransferOff() throws Exception {
        long pyrite = stage.studio.publish("Pyrite", 88);
        int whole = ok(get(address(pyrite))).getContentAsByteArray().length;
        Path master = stage.studio.master(pyrite);
        byte[] bytes = Files.readAllBytes(master);
        bytes[10] ^= 1;
        Files.write(master, bytes);
        MockHttpServletResponse answer = new MockHttpServletResponse();
        try {
            answer = send(get(address(pyrite)));
        } catch (Exception e) {
            assertThat(e).hasStackTraceContaining("is not what it was when the bag was laid out");
        }
        assertThat(answer.getContentAsByteArray().length).isLessThan(whole);
    }

    @Test
    void manyArePackedInTheBackgroundAStepAtATime(@TempDir Path out) throws Exception {
        for (int i = 0; i < 4; i++) stage.studio.publish("Beetle " + i, 60 + i);
        MockHttpServletResponse ordered = send(post("/api/archive/packages?subject=Beetle&frames=included"));
        assertThat(ordered.getStatus()).isEqualTo(202);
        String location = String.valueOf(ordered.getHeader("Location"));
        MockHttpServletResponse early = send(get(location + "/bag.tar"));
        assertThat(early.getStatus()).isEqualTo(409);
        assertThat(early.getContentAsString()).contains("is not ready yet");
        int steps = 0;
        while (stage.packages.step(1)) steps++;
        assertThat(steps).as("one file a step, with this budget").isGreaterThan(10);
        assertThat(ok(get(location)).getContentAsString()).contains("\"state\":\"READY\"");
        Path bag = unpack(ok(get(location + "/bag.tar")), out);
        command(bag, "sha512sum", "--strict", "-c", "manifest-sha512.txt");
        try (BagVerifier verifier = new BagVerifier()) {
            verifier.isValid(new BagReader().read(bag), false);
        }
        try (var folders = Files.list(bag.resolve("data"))) {
            assertThat(folders).hasSize(4).allSatisfy(BagApiTest::whatWasDoneNamesFilesThatAreThere);
        }
    }

    private static void whatWasDoneNamesFilesThatAreThere(Path publication) throws IOException {
        Path bag = publication.resolve("../..").normalize();
        assertThat(LOCATION.matcher(Files.readString(publication.resolve("premis.xml")))
                        .results()
                        .map(place -> bag.resolve(place.group(1))))
                .hasSize(8)
                .allSatisfy(place -> assertThat(place).startsWith(publication).isRegularFile());
    }

    @Test
    void whatCannotBePackedIsRefusedInASentence() throws Exception {
        assertThat(send(get(address(999))).getContentAsString()).contains("Run 999 is not published.");
        assertThat(send(get(address(run) + "?frames=maybe")).getContentAsString())
                .contains("frames: found 'maybe', expected named, included or fetch");
        assertThat(send(post("/api/archive/packages?subject=nobody")).getStatus())
                .isEqualTo(422);
    }

    private static String address(long published) {
        return "/api/archive/publications/" + published + "/bag.tar";
    }

    private static MockHttpServletResponse ok(MockHttpServletRequestBuilder request) throws Exception {
        MockHttpServletResponse response = send(request);
        assertThat(response.getStatus()).as(response.getErrorMessage()).isEqualTo(200);
        return response;
    }

    private static MockHttpServletResponse send(MockHttpServletRequestBuilder request) throws Exception {
        return stage.web.perform(request.principal(() -> "ada")).andReturn().getResponse();
    }

    private static Path unpack(MockHttpServletResponse response, Path out) throws Exception {
        Path tar = Files.write(out.resolve("bag.tar"), response.getContentAsByteArray());
        command(out, "tar", "-xf", tar.toString());
        try (var folders = Files.list(out)) {
            return folders.filter(Files::isDirectory).findFirst().orElseThrow();
        }
    }

    private static String command(Path where, String... words) throws IOException, InterruptedException {
        Process process = new ProcessBuilder(words)
                .directory(where.toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        assertThat(process.exitValue()).as(said).isZero();
        return said;
    }
}
