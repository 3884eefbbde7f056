package org.stook.scenes.bracket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.scenes.subject.Subjects;

class TruthTest {

    /** The frames are drawn, not resampled: looked up at its placement an in-focus frame shows the truth. */
    @ParameterizedTest
    @ValueSource(strings = {"mineral", "shell"})
    void placedFrameShowsTheTruthWhereItIsInFocus(String name) {
        BracketPlan plan = BracketPlan.of(300, 200, 6, 5).still().withMotion(new Motion(0.004, 2, 0.05));
        Bracket bracket = Bracket.of(Subjects.named(name, 2), plan);
        Truth truth = bracket.truth();
        boolean[] edge = truth.silhouette(8);
        float[] position = truth.position();
        double placed = 0;
        double unplaced = 0;
        int count = 0;
        int frame = 2;
        Picture picture = bracket.clean(frame);
        for (int p = 0; p < edge.length; p++) {
            int x = p % 300;
            int y = p / 300;
            if (edge[p] || Math.abs(position[p] - frame) > 0.2) continue;
            if (x < 10 || y < 10 || x > 289 || y > 189) continue;
            double[] m = truth.placement(frame);
            double wanted = truth.linear().at(1, x, y);
            double at =
                    Lookup.lanczos(picture.planes()[1], 300, m[0] * x + m[1] * y + m[2], m[3] * x + m[4] * y + m[5]);
            placed += (at - wanted) * (at - wanted);
            unplaced += Math.pow(picture.at(1, x, y) - wanted, 2);
            count++;
        }
        assertThat(count).isGreaterThan(100);
        assertThat(Math.sqrt(placed / count)).isLessThan(0.01);
        assertThat(unplaced).isGreaterThan(16 * placed);
    }

    @Test
    void truthInAnotherFramesGeometryIsTheSameTruthPlacedThere() {
        BracketPlan plan = BracketPlan.of(300, 200, 6, 5).withMotion(new Motion(0.004, 2, 0.05));
        Bracket bracket = Bracket.of(Subjects.shell(2), plan);
        Truth here = bracket.truth();
        Truth there = bracket.truthIn(1);
        double[] toThere = here.placement(1);
        double[] toFour = there.placement(4);
        double x = toThere[0] * 100 + toThere[1] * 50 + toThere[2];
        double y = toThere[3] * 100 + toThere[4] * 50 + toThere[5];

        assertThat(toFour[0] * x + toFour[1] * y + toFour[2])
                .isCloseTo(here.placement(4)[0] * 100 + here.placement(4)[1] * 50 + here.placement(4)[2], within(1e-9));
        assertThat(there.placement(1)).containsExactly(new double[] {1, 0, 0, 0, 1, 0, 0, 0, 1}, within(1e-12));
        assertThat(Lookup.lanczos(there.linear().planes()[1], 300, x, y)
                        / here.linear().at(1, 100, 50))
                .isCloseTo(here.gain(1), within(0.02));
    }
}
