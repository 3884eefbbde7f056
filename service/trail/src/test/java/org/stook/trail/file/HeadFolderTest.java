package org.stook.trail.file;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.stook.trail.Head;
import org.stook.trail.SealedLeaf;
import org.stook.trail.merkle.Hash;

class HeadFolderTest {
    @TempDir
    private Path home;

    private HeadFolder folder;

    @BeforeEach
    void open() {
        folder = new HeadFolder(home.resolve(HeadFolder.NAME));
    }

    private static SealedLeaf leaf(int n) {
        return new SealedLeaf(n, Hash.leaf(new byte[] {(byte) n}));
    }

    private static Head head(long size) {
        return new Head(size, Hash.empty(), Hash.empty(), Instant.EPOCH.plusSeconds(size), null);
    }

    @Test
    void whatWasAddedIsFoundAgain() throws IOException {
        assertThat(folder.lastHead()).isEmpty();
        assertThat(folder.leafCount()).isZero();
        folder.addLeaves(List.of(leaf(1), leaf(3)).iterator());
        folder.addHeads(List.of(head(1), head(2)));
        folder.addLeaves(List.of(leaf(4)).iterator());
        folder.addHeads(List.of(head(3)));
        assertThat(folder.lastHead()).contains(head(3));
        assertThat(folder.leafCount()).isEqualTo(3);
        assertThat(folder.leaf(1)).isEqualTo(leaf(3));
        assertThat(HeadFolder.readHeads(folder.heads())).containsExactly(head(1), head(2), head(3));
        try (HeadFolder.Leaves leaves = HeadFolder.readLeaves(folder.leaves())) {
            assertThat(List.of(leaf(1), leaf(3), leaf(4)))
                    .allSatisfy(expected -> assertThat(leaves.next()).isEqualTo(expected));
            assertThat(leaves.next()).isNull();
        }
    }

    @Test
    void aLineThatACrashCutShortIsWrittenAnew() throws IOException {
        folder.addLeaves(List.of(leaf(1)).iterator());
        folder.addHeads(List.of(head(1)));
        Files.writeString(folder.leaves(), "00000000000000", StandardOpenOption.APPEND);
        Files.writeString(folder.heads(), "{\"at\":\"2026", StandardOpenOption.APPEND);
        assertThat(folder.leafCount()).isEqualTo(1);
        assertThat(folder.lastHead()).contains(head(1));
        assertThat(HeadFolder.readHeads(folder.heads())).containsExactly(head(1));
        folder.addLeaves(List.of(leaf(2)).iterator());
        folder.addHeads(List.of(head(2)));
        assertThat(folder.leaf(1)).isEqualTo(leaf(2));
        assertThat(HeadFolder.readHeads(folder.heads())).containsExactly(head(1), head(2));
    }

    @Test
    void aLineThatIsNoHeadIsNamed() throws IOException {
        folder.addHeads(List.of(head(1)));
        Files.writeString(folder.heads(), "scribble\n", StandardOpenOption.APPEND);
        assertThatThrownBy(() -> HeadFolder.readHeads(folder.heads()))
                .hasMessageContaining("heads.jsonl, line 2")
                .hasMessageContaining("scribble");
    }
}
