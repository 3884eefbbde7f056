package org.stook.app.stack;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class SelectionTest {
    private static final LocalDateTime NOON = LocalDateTime.of(2026, 3, 2, 12, 0);

    @Test
    void captureTimeOrdersTheSweepAndNamesBreakTies() {
        Selection selection = Selection.of(List.of(
                frame("b.tif", "1", 30, NOON.plusSeconds(2)),
                frame("z.tif", "2", 30, null),
                frame("d.tif", "3", 30, NOON),
                frame("c.tif", "4", 30, NOON)));
        assertThat(selection.sweep()).extracting(Candidate::name).containsExactly("c.tif", "d.tif", "b.tif", "z.tif");
        assertThat(selection.strays()).isEmpty();
    }

    @Test
    void framesOfAnotherSizeAndSecondCopiesAreSetAsideWithAReason() {
        Selection selection = Selection.of(List.of(
                frame("a.tif", "1", 30, null),
                frame("b.tif", "2", 30, null),
                frame("c.tif", "2", 30, null),
                frame("d.tif", "3", 31, null)));
        assertThat(selection.sweep()).extracting(Candidate::name).containsExactly("a.tif", "b.tif");
        assertThat(selection.strays())
                .extracting(Selection.Stray::reason)
                .containsExactly(
                        "c.tif: holds the same bytes as b.tif, a frame is used once",
                        "d.tif: is 31 x 20 pixels, expected 30 x 20 as in 3 other frames of this stack");
    }

    @Test
    void hashesAreSha256() {
        assertThat(Hashes.of("abc")) // FIPS 180-4's example "abc"
                .isEqualTo("ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
    }

    private static Candidate frame(String name, String hash, int width, @Nullable LocalDateTime captured) {
        return new Candidate(
                1, new Candidate.Place(1, "agate/" + name), hash, new Candidate.Facts(width, 20, captured, false));
    }
}
