package org.stook.studioday;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class VerdictTest {
    private final Map<String, Findings.Found> found = new HashMap<>();
    private final List<Findings.Stack> stacks = new ArrayList<>();

    private final List<Piece> day = List.of(piece(0, "HC-1", true), piece(1, "HC-2", false));

    VerdictTest() {
        stacks.add(new Findings.Stack(11, "HC-1", "SEALED", null, 3, 1));
        stacks.add(new Findings.Stack(12, "north 09.00", "COLLECTING", "which subject is it?", 0, 0));
        for (Piece piece : day) {
            for (Drop drop : piece.drops()) {
                boolean stray = drop.truth().kind() == Truth.Kind.STRAY;
                found(drop.path(), stray ? "STRAY" : "ACCEPTED", 11L + piece.number());
            }
        }
    }

    @Test
    void aDayThatWentWellKeepsAllButItsLength() {
        assertThat(unkept()).containsExactly("stacks shot");
    }

    @Test
    void aLostFileCounts() {
        found.remove("north:0-1.jpg");
        assertThat(unkept()).contains("files lost", "frames in the right stack");
    }

    @Test
    void aFrameInAnothersStackCounts() {
        found("0-1.jpg", "ACCEPTED", 12L);
        assertThat(unkept()).contains("frames in the right stack");
    }

    @Test
    void aFrameSetAsideWithoutCauseAndAStrayLeftInCount() {
        found("0-1.jpg", "STRAY", 11L);
        found("1-stray.jpg", "ACCEPTED", 12L);
        assertThat(unkept()).contains("strays, precision", "strays, recall");
    }

    @Test
    void aWrongNameCountsAndSoDoesANameThatNobodyRead() {
        stacks.set(0, new Findings.Stack(11, "HC-2", "SEALED", null, 3, 1));
        stacks.set(1, new Findings.Stack(12, "HC-3", "SEALED", null, 3, 1));
        assertThat(unkept()).contains("stacks under a wrong name", "stacks that ask for their name");
    }

    @Test
    void aSecondRunCounts() {
        stacks.set(0, new Findings.Stack(11, "HC-1", "SEALED", null, 3, 2));
        assertThat(unkept()).contains("stacks or runs doubled");
    }

    private List<String> unkept() {
        return new Verdict(Map.of("north", day), new Findings(found, stacks))
                .lines().stream().filter(line -> !line.kept()).map(Line::what).toList();
    }

    private void found(String path, String state, @Nullable Long stack) {
        found.put("north:" + path, new Findings.Found(state, "FRAME", stack, null));
    }

    private static Piece piece(int number, String subject, boolean readable) {
        List<Drop> drops = new ArrayList<>();
        for (int i = 0; i < 3; i++) drops.add(drop(number + "-" + i + ".jpg", Truth.Kind.SWEEP, number));
        drops.add(drop(number + "-stray.jpg", Truth.Kind.STRAY, number));
        return new Piece(number, subject, "", readable, drops);
    }

    private static Drop drop(String path, Truth.Kind kind, int number) {
        return new Drop(path, new Truth(kind, number), () -> new byte[0], Drop.How.AT_ONCE);
    }
}
