package org.stook.imaging.frame;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PlacementTest {
    private static final Placement TILTED = Placement.of(1.01, 0.02, 3, -0.02, 0.99, -4, 1e-5, -2e-5, 1);

    @Test
    void undoneByItsInverse() {
        Placement round = TILTED.then(TILTED.inverse());
        assertThat(round.x(123, 45)).isCloseTo(123, within(1e-9));
        assertThat(round.y(123, 45)).isCloseTo(45, within(1e-9));
    }

    @Test
    void thenAppliesTheSecondToTheFirstsResult() {
        Placement turn = Placement.similarity(1, Math.PI / 2, 0, 0, 0, 0);
        Placement shift = Placement.affine(1, 0, 10, 0, 1, 0);
        assertThat(turn.then(shift).x(1, 0)).isCloseTo(10, within(1e-12));
        assertThat(shift.then(turn).y(1, 0)).isCloseTo(11, within(1e-12));
    }

    @Test
    void similarityKeepsItsCentreUpToTheShift() {
        Placement p = Placement.similarity(1.06, 0.1, 2, -3, 50, 40);
        assertThat(p.x(50, 40)).isCloseTo(52, within(1e-12));
        assertThat(p.y(50, 40)).isCloseTo(37, within(1e-12));
        assertThat(p.scaleAt(7, 9)).isCloseTo(1.06, within(1e-12));
    }

    @Test
    void reductionUsesTheCentresOfTheMeanCells() {
        // A shift of 4 pixels is a shift of 1 in cells of 4 x 4, wherever it is looked at.
        Placement reduced = Placement.affine(1, 0, 4, 0, 1, 8).reducedBy(4);
        assertThat(reduced.x(10, 20)).isCloseTo(11, within(1e-12));
        assertThat(reduced.y(10, 20)).isCloseTo(22, within(1e-12));
        // Enlarging by 2 about full pixel 0 moves reduced pixel 0 (full 1.5) to full 3, which is reduced 0.375.
        assertThat(Placement.affine(2, 0, 0, 0, 2, 0).reducedBy(4).x(0, 0)).isCloseTo(0.375, within(1e-12));
    }

    @Test
    void refusesWhatIsNoPlacement() {
        assertThatThrownBy(() -> Placement.of(1, 2, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Placement.of(1, 0, 0, 0, 1, Double.NaN, 0, 0, 1))
                .isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Placement.affine(0, 0, 0, 0, 0, 0).inverse()).isInstanceOf(ArithmeticException.class);
    }
}
