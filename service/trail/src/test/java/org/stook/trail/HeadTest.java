package org.stook.trail;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.trail.merkle.Hash;

class HeadTest {
    private static final Head HEAD =
            new Head(3, Hash.leaf(new byte[] {3}), Hash.leaf(new byte[] {2}), Instant.EPOCH, null);

    @TempDir
    private Path folder;

    @Test
    void aSignedHeadSurvivesTheLineItIsWrittenIn() throws IOException {
        HeadKey key = HeadKey.open(folder.resolve("key/head-key.pem"));
        Head signed = HEAD.signed(key);
        Head read = Head.parse(signed.toJson());
        assertThat(read).isEqualTo(signed);
        assertThat(read.signedBy(key.publicKey())).isTrue();
        assertThat(HEAD.signedBy(key.publicKey())).isFalse();
    }

    @Test
    void aChangeOfAHeadOrAnotherKeyIsSeen() throws IOException {
        HeadKey key = HeadKey.open(folder.resolve("a.pem"));
        Head signed = HEAD.signed(key);
        Head changed = new Head(4, signed.root(), signed.previous(), signed.at(), signed.signature());
        assertThat(changed.signedBy(key.publicKey())).isFalse();
        assertThat(signed.signedBy(HeadKey.open(folder.resolve("b.pem")).publicKey()))
                .isFalse();
    }

    @Test
    void aKeyIsMadeOnceAndForItsOwnerOnly() throws IOException {
        Path file = folder.resolve("key.pem");
        HeadKey made = HeadKey.open(file);
        assertThat(PosixFilePermissions.toString(Files.getPosixFilePermissions(file)))
                .isEqualTo("rw-------");
        assertThat(HEAD.signed(HeadKey.open(file)).signedBy(made.publicKey())).isTrue();
        Files.writeString(folder.resolve("public.pem"), made.publicKey().pem());
        assertThat(PublicHeadKey.read(folder.resolve("public.pem")).fingerprint())
                .isEqualTo(made.publicKey().fingerprint())
                .hasSize(16);
    }

    @Test
    void whatIsNoHeadOrNoKeyIsNamed() throws IOException {
        assertThatThrownBy(() -> Head.parse("{\"size\":1}")).hasMessageContaining("no head of an audit trail");
        Path file = Files.writeString(folder.resolve("key.pem"), "nothing");
        assertThatThrownBy(() -> HeadKey.open(file)).hasMessageContaining("key.pem: found no PEM block PRIVATE KEY");
    }
}
