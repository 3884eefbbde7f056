package org.stook.trail.stamp;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.security.cert.X509Certificate;
import java.time.Instant;
import java.util.Base64;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.trail.Head;
import org.stook.trail.check.Findings;
import org.stook.trail.check.KnownHeads;
import org.stook.trail.check.StampCheck;
import org.stook.trail.file.StampFiles;
import org.stook.trail.merkle.Hash;

class TimeStampTest {
    private static final Head HEAD = new Head(3, Hash.ofHex("ab".repeat(32)), Hash.empty(), Instant.EPOCH, null);
    private static final Head OTHER = new Head(3, Hash.ofHex("cd".repeat(32)), Hash.empty(), Instant.EPOCH, null);

    @TempDir
    private Path folder;

    private static TestAuthority authority;
    private static byte[] token;

    @BeforeAll
    static void stamp() throws Exception {
        authority = new TestAuthority();
        token = new StampAuthority(authority.address()).stamp(HEAD);
    }

    @AfterAll
    static void close() {
        authority.close();
    }

    @Test
    void saysWhatWasStampedWhenAndByWhom() throws Exception {
        TimeStamp stamp = TimeStamp.read(token);
        assertThat(stamp.at()).isEqualTo(TestAuthority.NOW);
        assertThat(stamp.isOf(HEAD)).isTrue();
        assertThat(stamp.isOf(OTHER)).isFalse();
        assertThat(stamp.madeUnder(authority.own)).contains("CN=Harrow Time");
        assertThat(stamp.madeUnder(authority.above)).contains("CN=Harrow Time");
        try (TestAuthority stranger = new TestAuthority()) {
            assertThat(stamp.madeUnder(stranger.own)).isEmpty();
            assertThat(stamp.madeUnder(stranger.above)).isEmpty();
        }
    }

    @Test
    void aTokenMadeToFitAnotherHeadIsNobodys() throws Exception {
        String bytes = new String(token, ISO_8859_1);
        String changed = bytes.replace(
                new String(TimeStamp.imprint(HEAD), ISO_8859_1), new String(TimeStamp.imprint(OTHER), ISO_8859_1));
        TimeStamp forged = TimeStamp.read(changed.getBytes(ISO_8859_1));
        assertThat(forged.isOf(OTHER)).isTrue();
        assertThat(forged.madeUnder(authority.own)).isEmpty();
    }

    @Test
    void verifyNamesEachStampThatDoesNotFit() throws Exception {
        StampFiles files = new StampFiles(folder);
        files.add(3, token);
        assertThat(check(files, HEAD, authority.above).proven())
                .containsExactly("1 heads are stamped; the head over 3 entries was there at 2026-03-02T12:00:00Z,"
                        + " by the clock of CN=Harrow Time");
        assertThat(check(files, HEAD, null).unproven())
                .singleElement()
                .asString()
                .contains("no --authority was given");
        assertThat(check(files, OTHER, authority.above).bad())
                .containsExactly("0000000000000000003.tst: the head over 3 entries is another than the one stamped at"
                        + " 2026-03-02T12:00:00Z");
        files.add(4, token);
        Files.writeString(files.file(5), "scribble");
        assertThat(check(files, HEAD, authority.above).bad())
                .hasSize(2)
                .anySatisfy(s -> assertThat(s).contains("there is no head over 4 entries"))
                .anySatisfy(s -> assertThat(s).contains("0000000000000000005.tst: found no time stamp token"));
    }

    private static Findings check(StampFiles files, Head head, @Nullable X509Certificate trusted) throws IOException {
        Findings findings = new Findings();
        new StampCheck(KnownHeads.of(List.of(head), null), trusted, findings).run(files);
        return findings;
    }

    /** Outside check: openssl's ts command reads the same token and finds it good for the head's line. */
    @Test
    void opensslVerifiesTheTokenForTheHeadsLine() throws Exception {
        Path openssl = Path.of("/usr/bin/openssl");
        if (!Files.isExecutable(openssl)) {
            System.err.println("openssl is absent: time stamps are NOT held against it");
            return;
        }
        Files.write(folder.resolve("token.tst"), token);
        Files.write(folder.resolve("head.json"), HEAD.toJson().getBytes(UTF_8));
        Files.writeString(
                folder.resolve("above.pem"),
                "-----BEGIN CERTIFICATE-----\n"
                        + Base64.getMimeEncoder().encodeToString(authority.above.getEncoded())
                        + "\n-----END CERTIFICATE-----\n");
        Process process = new ProcessBuilder(
                        openssl.toString(),
                        "ts",
                        "-verify",
                        "-data",
                        "head.json",
                        "-in",
                        "token.tst",
                        "-token_in",
                        "-CAfile",
                        "above.pem",
                        "-attime",
                        String.valueOf(TestAuthority.NOW.getEpochSecond()))
                .directory(folder.toFile())
                .redirectErrorStream(true)
                .start();
        String said = new String(process.getInputStream().readAllBytes(), UTF_8);
        assertThat(said).contains("Verification: OK");
    }

    @Test
    void anAuthorityThatIsAwayOrAnswersSomethingElseIsSaid() {
        URI away = URI.create("http://127.0.0.1:1/");
        assertThatThrownBy(() -> new StampAuthority(away).stamp(HEAD)).isInstanceOf(IOException.class);
    }
}
