package org.stook.studioday;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.stook.scenes.bracket.Picture;

class ScriptTest {
    private final List<Roll.Shots> roll = List.of(
            new Roll.Shots(Collections.nCopies(Roll.FRAMES, picture()), picture(), picture(), picture(), picture()));

    private static Picture picture() {
        return Picture.black(32, 24);
    }

    @Test
    void theSameSeedIsTheSameDay() {
        assertThat(names(new Script(7, roll, "N", false).pieces(0, 40)))
                .isEqualTo(names(new Script(7, roll, "N", false).pieces(0, 40)))
                .isNotEqualTo(names(new Script(8, roll, "N", false).pieces(0, 40)));
    }

    @Test
    void aDayHasAllTheMessThatArrives() {
        List<Piece> day = new Script(1, roll, "N", false).pieces(0, 60);
        List<Drop> drops = day.stream().flatMap(p -> p.drops().stream()).toList();
        assertThat(drops.stream().map(d -> d.truth().kind()).collect(Collectors.toSet()))
                .isEqualTo(EnumSet.allOf(Truth.Kind.class));
        assertThat(drops.stream().map(Drop::how).collect(Collectors.toSet())).isEqualTo(EnumSet.allOf(Drop.How.class));
        assertThat(day).anyMatch(p -> !p.readable()).anyMatch(p -> !p.view().isEmpty());
        Set<String> paths = drops.stream().map(Drop::path).collect(Collectors.toSet());
        assertThat(paths).hasSameSizeAs(drops);
    }

    @Test
    void everyStackHasItsWholeSweep() {
        for (Piece piece : new Script(3, roll, "S", true).pieces(0, 60)) {
            assertThat(piece.drops().stream().filter(d -> d.truth().kind() == Truth.Kind.SWEEP))
                    .hasSize(Roll.FRAMES);
        }
    }

    private static List<String> names(List<Piece> day) {
        return day.stream()
                .flatMap(p -> p.drops().stream())
                .map(d -> d.path() + d.truth() + d.how())
                .toList();
    }
}
