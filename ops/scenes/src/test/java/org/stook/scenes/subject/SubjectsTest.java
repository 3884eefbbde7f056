package org.stook.scenes.subject;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What every subject owes; a new one is tested by being in the list. */
class SubjectsTest {
    private static final double PIXEL = 1.0 / 240;

    static Stream<Subject> all() {
        return Subjects.all(3).stream();
    }

    static Stream<Subject> pieces() {
        return Subjects.pieces(3).stream();
    }

    @ParameterizedTest
    @MethodSource("all")
    void samplesStayInRange(Subject subject) {
        for (Sheet sheet : subject.sheets(PIXEL)) {
            Hit hit = new Hit();
            for (double y = -0.6; y <= 0.6; y += 0.011) {
                for (double x = -0.9; x <= 0.9; x += 0.013) {
                    sheet.sample(x, y, hit);
                    assertThat(hit.depth)
                            .isBetween(sheet.extent().near(), sheet.extent().far());
                    assertThat(hit.cover).isBetween(0.0, 1.0);
                    if (hit.cover == 0) continue;
                    assertThat(hit.red).isBetween(0.0, 1.3);
                    assertThat(hit.green).isBetween(0.0, 1.3);
                    assertThat(hit.blue).isBetween(0.0, 1.3);
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("all")
    void nothingIsCoveredOutsideTheExtent(Subject subject) {
        for (Sheet sheet : subject.sheets(PIXEL)) {
            Extent e = sheet.extent();
            Hit hit = new Hit();
            for (double t = 0; t <= 1; t += 0.02) {
                double x = Edges.mix(e.minX(), e.maxX(), t);
                double y = Edges.mix(e.minY(), e.maxY(), t);
                if (e.maxX() > 100) continue;
                for (double[] at : new double[][] {
                    {x, e.minY() - PIXEL}, {x, e.maxY() + PIXEL}, {e.minX() - PIXEL, y}, {e.maxX() + PIXEL, y}
                }) {
                    sheet.sample(at[0], at[1], hit);
                    assertThat(hit.cover).isZero();
                }
            }
        }
    }

    @ParameterizedTest
    @MethodSource("pieces")
    void pieceUsesItsDepthAndStandsBeforeABackdrop(Subject subject) {
        List<Sheet> sheets = subject.sheets(PIXEL);
        double near = 1;
        double far = 0;
        for (Sheet sheet : sheets.subList(1, sheets.size())) {
            Hit hit = new Hit();
            for (double y = -0.5; y <= 0.5; y += 0.007) {
                for (double x = -0.75; x <= 0.75; x += 0.007) {
                    sheet.sample(x, y, hit);
                    if (hit.cover < 0.5) continue;
                    near = Math.min(near, hit.depth);
                    far = Math.max(far, hit.depth);
                }
            }
        }
        assertThat(near).isLessThan(0.12);
        assertThat(far).isGreaterThan(0.9);
        assertThat(sheets.get(0).extent().near()).isGreaterThan(1.2);
    }

    @Test
    void grainSlopesAreThoseOfItsValues() {
        Texture texture = new Texture(new Grain(5), 0.02, 0.1, 1.1, 3);
        double[] slopes = new double[3];
        texture.withSlopes(0.123, -0.217, slopes);
        double h = 1e-6;
        assertThat(slopes[0]).isCloseTo(texture.at(0.123, -0.217), within(1e-9));
        assertThat(slopes[1])
                .isCloseTo((texture.at(0.123 + h, -0.217) - texture.at(0.123 - h, -0.217)) / (2 * h), within(1e-3));
        assertThat(slopes[2])
                .isCloseTo((texture.at(0.123, -0.217 + h) - texture.at(0.123, -0.217 - h)) / (2 * h), within(1e-3));
    }

    @Test
    void sheetsThatOverlapAreLaidFromBackToFront() {
        FlatPart near = part(0.2);
        FlatPart far = part(0.8);
        FlatPart middle = part(0.5);
        assertThat(Painting.backToFront(List.of(near, far, middle))).containsExactly(far, middle, near);
    }

    private static FlatPart part(double depth) {
        return new FlatPart(
                Outline.disc(0, 0, 0.1),
                new FlatPart.Tilt(0, 0, 0.1, depth, 0, 0),
                (x, y, hit) -> hit.colour(Metal.BRASS, 1),
                PIXEL);
    }

    @Test
    void patchesLieApartAndInsideASquareFrame() {
        List<Patch> patches = Subjects.patches();
        assertThat(patches).hasSize(24).allMatch(p -> Math.abs(p.left()) < 0.5 && Math.abs(p.top()) < 0.5);
        for (Patch patch : patches) {
            double x = patch.left() + patch.size() / 2;
            double y = patch.top() + patch.size() / 2;
            assertThat(patches).filteredOn(p -> p.inside(x, y) > 0).containsExactly(patch);
        }
    }

    @Test
    void unknownNameIsAnsweredWithTheNamesThereAre() {
        assertThatThrownBy(() -> Subjects.named("teapot", 1))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("teapot")
                .hasMessageContaining("mineral");
    }
}
