package org.stook.trail.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.trail.Entry;
import org.stook.trail.Head;
import org.stook.trail.HeadKey;
import org.stook.trail.SealedLeaf;
import org.stook.trail.file.HeadFolder;
import org.stook.trail.merkle.Hash;

class VerifyTest {
    private static final Entry ENTRY =
            new Entry(1, "700", Instant.EPOCH, "ada", "sign-in", "person/ada", "{\"from\":\"desk\"}");

    @TempDir
    private Path folder;

    private HeadFolder place;
    private Path entries;

    @BeforeEach
    void seal() throws IOException {
        HeadKey key = HeadKey.open(folder.resolve("head-key.pem"));
        place = new HeadFolder(folder.resolve("kept"));
        place.addKey(key.publicKey());
        place.addLeaves(List.of(new SealedLeaf(1, ENTRY.leaf())).iterator());
        place.addHeads(List.of(new Head(1, ENTRY.leaf(), Hash.empty(), Instant.EPOCH, null).signed(key)));
        entries = Files.writeString(folder.resolve("trail.jsonl"), ENTRY.canonical() + "\n");
    }

    private int trail(String... more) {
        List<String> line = new java.util.ArrayList<>(
                List.of("trail", "--heads", place.heads().toString()));
        line.addAll(List.of(more));
        return Main.run(line.toArray(String[]::new));
    }

    @Test
    void theExitCodeSaysWhatWasFound() throws IOException {
        String key = folder.resolve("kept/key.pem").toString();
        String leaves = place.leaves().toString();
        assertThat(trail("--entries", entries.toString(), "--leaves", leaves, "--key", key))
                .isZero();
        Files.writeString(entries, ENTRY.canonical().replace("ada", "eve") + "\n");
        assertThat(trail("--entries", entries.toString(), "--leaves", leaves)).isEqualTo(3);
        Files.writeString(entries, "scribble\n");
        assertThat(trail("--entries", entries.toString(), "--leaves", leaves)).isEqualTo(5);
        assertThat(trail("--entries", entries.toString()))
                .as("leaves are missing")
                .isEqualTo(2);
        assertThat(trail()).as("nothing to check").isEqualTo(2);
        assertThat(Main.run("bag", folder.toString())).as("no bag").isEqualTo(5);
    }
}
