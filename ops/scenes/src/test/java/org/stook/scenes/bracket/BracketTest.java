package org.stook.scenes.bracket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.Test;
import org.stook.scenes.subject.Subjects;

class BracketTest {
    private static final BracketPlan PLAN = BracketPlan.of(180, 120, 5, 3);

    @Test
    void referenceFrameLiesAtIdentity() {
        Bracket bracket = Bracket.of(Subjects.mineral(1), PLAN.withReference(2));
        assertThat(bracket.pose(2).placement()).containsExactly(1, 0, 0, 0, 1, 0, 0, 0, 1);
    }

    @Test
    void inverseUndoesPlacement() {
        Pose pose = new Pose(1.013, 0.002, 3.5, -1.25, 89.5, 59.5);
        double[] p = pose.placement();
        double[] q = pose.inverse();
        double x = p[0] * 12 + p[1] * 70 + p[2];
        double y = p[3] * 12 + p[4] * 70 + p[5];
        assertThat(q[0] * x + q[1] * y + q[2]).isCloseTo(12, within(1e-9));
        assertThat(q[3] * x + q[4] * y + q[5]).isCloseTo(70, within(1e-9));
    }

    @Test
    void scaleGrowsByTheBreathingAskedForAboutTheOpticalCentre() {
        Bracket bracket = Bracket.of(
                Subjects.mineral(1),
                PLAN.withMotion(new Motion(0, 0, 0)).withTotalBreathing(0.11).withReference(0));
        double[] last = bracket.pose(4).placement();
        assertThat(last[0]).isCloseTo(1.11, within(1e-12));
        assertThat(last[0] * 89.5 + last[2]).isCloseTo(89.5, within(1e-9));
    }

    @Test
    void bumpMovesOneFrameOrAllAfterIt() {
        BracketPlan still = PLAN.withMotion(Motion.NONE).withReference(0);
        Bracket once = Bracket.of(Subjects.mineral(1), still.withBumps(new Bump(2, 8, 0, false)));
        Bracket lasting = Bracket.of(Subjects.mineral(1), still.withBumps(new Bump(2, 8, 0, true)));
        assertThat(once.pose(2).shiftX()).isEqualTo(8);
        assertThat(once.pose(3).shiftX()).isZero();
        assertThat(lasting.pose(3).shiftX()).isEqualTo(8);
    }

    @Test
    void samePlanGivesTheSameSamplesOnOneThreadAndOnMany() throws Exception {
        BracketPlan plan = BracketPlan.of(300, 280, 5, 3);
        ForkJoinPool one = new ForkJoinPool(1);
        ForkJoinPool many = new ForkJoinPool(7);
        try {
            float[][] alone = one.submit(
                            () -> Bracket.of(Subjects.shell(4), plan).linear(1).planes())
                    .get();
            float[][] crowd = many.submit(
                            () -> Bracket.of(Subjects.shell(4), plan).linear(1).planes())
                    .get();
            assertThat(Arrays.deepEquals(alone, crowd)).isTrue();
        } finally {
            one.shutdown();
            many.shutdown();
        }
    }

    @Test
    void anotherSeedGivesAnotherBracket() {
        Bracket bracket = Bracket.of(Subjects.mineral(1), PLAN);
        Bracket other = Bracket.of(Subjects.mineral(1), BracketPlan.of(180, 120, 5, 4));
        assertThat(other.pose(0)).isNotEqualTo(bracket.pose(0));
        assertThat(other.gain(1)).isNotEqualTo(bracket.gain(1));
    }

    @Test
    void sweepPastInfinityIsRefused() {
        BracketPlan plan = BracketPlan.of(100, 100, 200, 1);
        assertThatThrownBy(() -> Bracket.of(Subjects.shell(1), plan))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("infinity");
        assertThat(Bracket.of(Subjects.shell(1), plan.withRig(Rig.USUAL.withCircle(0.1)))
                        .sweep()
                        .reaches(199))
                .isTrue();
    }

    @Test
    void flickerStaysWithinTheRangeAskedFor() {
        Bracket bracket = Bracket.of(Subjects.mineral(1), PLAN.withFlicker(0.05));
        for (int i = 0; i < 5; i++) {
            assertThat(Math.abs(Math.log(bracket.gain(i)) / Math.log(2))).isLessThanOrEqualTo(0.05);
        }
    }

    /** Moved by whole pixels the same points fall into other tiles; the blur must not tell. */
    @Test
    void tilesLeaveNoSeams() {
        Bracket bracket =
                Bracket.of(Subjects.spray(2), BracketPlan.of(320, 280, 9, 1).still());
        Picture here = bracket.look(bracket.pose(4), 0);
        Picture moved = bracket.look(new Pose(1, 0, 37, 21, 159.5, 139.5), 0);
        float worst = 0;
        for (int y = 21; y < 280; y++) {
            for (int x = 37; x < 320; x++) {
                worst = Math.max(worst, Math.abs(moved.at(1, x, y) - here.at(1, x - 37, y - 21)));
            }
        }
        assertThat(worst).isLessThan(2e-4f);
    }
}
