package org.stook.trail.check;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.trail.Entry;
import org.stook.trail.Head;
import org.stook.trail.HeadKey;
import org.stook.trail.Proof;
import org.stook.trail.merkle.Hash;

class BagCheckTest {
    @TempDir
    private Path folder;

    private HeadKey key;
    private Path bag;
    private Path publication;
    private Head head;
    private Entry made;

    @BeforeEach
    void pack() throws IOException {
        key = HeadKey.open(folder.resolve("head-key.pem"));
        bag = folder.resolve("bag");
        publication = Files.createDirectories(bag.resolve("data/fluorite-7"));
        Files.writeString(publication.resolve("r4-master.tif"), "pixels");
        Files.writeString(publication.resolve("frame-1.jpg"), "frame");
        Files.writeString(
                publication.resolve("r4.json"),
                "{\"frames\":[{\"sha256\":\"%s\"},{\"sha256\":\"%s\"}]}"
                        .formatted(Digest.of(publication.resolve("frame-1.jpg"), "SHA-256"), "0".repeat(64)));
        String body =
                "{\"sha256\":\"%s\",\"files\":[{\"kind\":\"record\",\"sha256\":\"%s\"},{\"kind\":\"tiles\",\"sha256\":\"%s\"}]}"
                        .formatted(
                                Digest.of(publication.resolve("r4-master.tif"), "SHA-256"),
                                Digest.of(publication.resolve("r4.json"), "SHA-256"),
                                "1".repeat(64));
        made = new Entry(17, "700", Trail.START, "worker:w1", "publication.MADE", "publication/4", body);
        Hash neighbour = Hash.leaf(new byte[] {1});
        head = new Head(2, Hash.node(neighbour, made.leaf()), Hash.empty(), Trail.START, null).signed(key);
        prove(made.canonical(), neighbour);
        Files.writeString(bag.resolve("bagit.txt"), "BagIt-Version: 1.0\nTag-File-Character-Encoding: UTF-8\n");
        list();
    }

    private void prove(String canonical, Hash neighbour) throws IOException {
        Proof proof = new Proof(head, List.of(new Proof.Proven(1, canonical, List.of(neighbour))));
        Files.writeString(publication.resolve(Proof.FILE), proof.toJson());
    }

    /** Writes the manifest as if whoever changed the bag had covered the tracks. */
    private void list() throws IOException {
        StringBuilder lines = new StringBuilder();
        for (Path file : new BagFiles(bag, new Findings()).payload()) {
            lines.append(Digest.of(file, "SHA-512"))
                    .append("  ")
                    .append(bag.relativize(file))
                    .append('\n');
        }
        Files.writeString(bag.resolve("manifest-sha512.txt"), lines.toString());
    }

    private Findings check(@Nullable KnownHeads heads) throws IOException {
        Findings findings = new Findings();
        new BagCheck(bag, heads, findings).run();
        return findings;
    }

    private KnownHeads known() {
        return KnownHeads.of(List.of(head), key.publicKey());
    }

    @Test
    void aWholeBagIsProvenAndWhatIsNotIsSaid() throws IOException {
        Findings findings = check(known());
        assertThat(findings.bad()).isEmpty();
        assertThat(findings.proven())
                .anySatisfy(s -> assertThat(s).startsWith("4 files have the hashes of manifest-sha512.txt"))
                .anySatisfy(s -> assertThat(s).contains("1 audit entries are under the head over 2 entries"))
                .anySatisfy(s -> assertThat(s).startsWith("r4-master.tif is the master that was published (entry 17"))
                .anySatisfy(s -> assertThat(s).startsWith("r4.json is the record that was published"))
                .contains("1 frames in the bag are those that the record names");
        assertThat(findings.unproven())
                .contains("the tiles that was published is not in the bag")
                .anySatisfy(s -> assertThat(s).startsWith("1 files that the record names by hash"));
    }

    @Test
    void aDamagedFileIsNamed() throws IOException {
        Files.writeString(publication.resolve("frame-1.jpg"), "frame!");
        assertThat(check(known()).bad())
                .containsExactly("data/fluorite-7/frame-1.jpg: not what manifest-sha512.txt says (damaged or changed)");
    }

    @Test
    void anExchangedMasterIsFoundThoughTheManifestWasMadeAnew() throws IOException {
        Files.writeString(publication.resolve("r4-master.tif"), "other pixels");
        list();
        assertThat(check(known()).bad())
                .singleElement()
                .asString()
                .contains("no file here is the master that was published");
    }

    @Test
    void anEntryThatWasChangedInTheProofIsNamed() throws IOException {
        prove(made.canonical().replace("worker:w1", "worker:w2"), Hash.leaf(new byte[] {1}));
        list();
        assertThat(check(known()).bad())
                .singleElement()
                .asString()
                .contains("entry 17 (publication.MADE publication/4) is not under the head over 2 entries");
    }

    @Test
    void aHeadOfAnotherTrailOrAnotherKeyIsNoticed() throws IOException {
        Head other = new Head(2, Hash.empty(), Hash.empty(), Trail.START, null);
        HeadKey stranger = HeadKey.open(folder.resolve("stranger.pem"));
        assertThat(check(KnownHeads.of(List.of(other), stranger.publicKey())).bad())
                .anySatisfy(s -> assertThat(s).contains("is not signed by the key"))
                .anySatisfy(s -> assertThat(s).contains("two trails"));
    }

    @Test
    void withoutAHeadThatReachesSoFarItIsNotProven() throws IOException {
        assertThat(check(KnownHeads.of(List.of(), null)).unproven())
                .anySatisfy(s -> assertThat(s).contains("is not among the 0 given"));
        assertThat(check(null).unproven()).anySatisfy(s -> assertThat(s).contains("no heads were given"));
    }

    @Test
    void strangeAndAbsentFilesAreNamed() throws IOException {
        Files.delete(publication.resolve("frame-1.jpg"));
        Files.writeString(publication.resolve("extra.txt"), "");
        assertThat(check(known()).bad())
                .contains(
                        "data/fluorite-7/frame-1.jpg: in the manifest, but not in the bag",
                        "data/fluorite-7/extra.txt: in the bag, but in no manifest");
        assertThatThrownBy(() -> new BagCheck(folder, null, new Findings()).run())
                .hasMessageContaining("found no bagit.txt, expected an unpacked bag");
    }
}
