package org.stook.scenes.bracket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.stook.scenes.optics.SensorNoise;
import org.stook.scenes.subject.Patch;
import org.stook.scenes.subject.Subjects;

class StillsTest {
    private static final BracketPlan PLAN = BracketPlan.of(240, 160, 5, 1);

    @Test
    void blackFrameHoldsReadNoiseOnly() {
        Picture black = Stills.black(PLAN.withNoise(new SensorNoise(10_000, 6)));
        double square = 0;
        for (float v : black.planes()[0]) square += v * v;
        assertThat(Math.sqrt(square / black.planes()[0].length)).isCloseTo(6e-4, within(2e-5));
    }

    @Test
    void testShotDiffersFromEveryFrame() {
        Bracket bracket = Bracket.of(Subjects.shell(1), PLAN);
        Picture shot = Stills.testShot(bracket);
        for (int i = 0; i < 5; i++)
            assertThat(difference(shot, bracket.linear(i))).isGreaterThan(0.05);
    }

    @Test
    void patchesHaveTheLightTheyAreListedWith() {
        Picture card = Stills.card(
                Subjects.patchCard(2), PLAN.withNoise(SensorNoise.NONE).withFlicker(0));
        for (Patch patch : Subjects.patches()) {
            int x = (int) Math.round((patch.left() + patch.size() / 2) / PLAN.pixel() + 119.5);
            int y = (int) Math.round((patch.top() + patch.size() / 2) / PLAN.pixel() + 79.5);
            assertThat(card.at(0, x, y)).isCloseTo((float) patch.tint().red(), within(1e-5f));
            assertThat(card.at(2, x, y)).isCloseTo((float) patch.tint().blue(), within(1e-5f));
        }
    }

    @Test
    void labelsWithOtherTextDiffer() {
        Picture one = Stills.card(Subjects.labelCard(1, "HC-0117"), PLAN);
        Picture two = Stills.card(Subjects.labelCard(1, "HC-0118"), PLAN);
        assertThat(difference(one, two)).isGreaterThan(0.02);
    }

    private static double difference(Picture a, Picture b) {
        double sum = 0;
        for (int p = 0; p < a.planes()[1].length; p++) {
            sum += Math.pow(a.planes()[1][p] - b.planes()[1][p], 2);
        }
        return Math.sqrt(sum / a.planes()[1].length);
    }
}
