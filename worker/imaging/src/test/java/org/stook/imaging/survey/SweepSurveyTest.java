package org.stook.imaging.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.subject.Subjects;

class SweepSurveyTest {
    private static final BracketPlan PLAN = BracketPlan.of(480, 320, 12, 3).withFlicker(0.2);
    private static final List<FrameSurvey> SWEEP = Surveys.of(Subjects.mineral(5), PLAN);

    @Test
    void keepsAGoodSweepAsItIs() {
        SweepSurvey survey = SweepSurvey.of(SWEEP);
        assertThat(survey.order()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
        assertThat(survey.strays()).isEmpty();
        assertThat(survey.misplaced()).isEmpty();
        assertThat(survey.confidence()).isGreaterThan(0.95);
        assertThat(survey.coverage().gaps()).isEmpty();
    }

    @Test
    void findsEvenStepsEven() {
        double[] positions = SweepSurvey.of(SWEEP).positions();
        for (int i = 0; i < 11; i++) assertThat(positions[i + 1] - positions[i]).isBetween(0.7, 1.3);
    }

    @Test
    void restoresTwoSwappedFramesAndNamesThem() {
        SweepSurvey survey = SweepSurvey.of(arranged(0, 1, 2, 8, 4, 5, 6, 7, 3, 9, 10, 11));
        assertThat(survey.order()).containsExactly(0, 1, 2, 8, 4, 5, 6, 7, 3, 9, 10, 11);
        assertThat(survey.misplaced()).containsExactly(3, 8);
    }

    @Test
    void restoresTwoSwappedNeighbours() {
        SweepSurvey survey = SweepSurvey.of(arranged(0, 1, 2, 3, 5, 4, 6, 7, 8, 9, 10, 11));
        assertThat(survey.order()).containsExactly(0, 1, 2, 3, 5, 4, 6, 7, 8, 9, 10, 11);
        assertThat(survey.misplaced()).containsExactly(4, 5);
    }

    @Test
    void restoresAShuffledStackUpToItsDirection() {
        int[] shuffle = {7, 2, 11, 0, 9, 4, 6, 1, 10, 3, 8, 5};
        int[] order = SweepSurvey.of(arranged(shuffle)).order();
        List<Integer> frames = Arrays.stream(order).mapToObj(i -> shuffle[i]).toList();
        List<Integer> backwards = new ArrayList<>(frames);
        Collections.reverse(backwards);
        List<Integer> truth = IntStream.range(0, 12).boxed().toList();
        assertThat(List.of(frames, backwards)).contains(truth);
    }

    @Test
    void runsTheWayTheCaptureRan() {
        SweepSurvey survey = SweepSurvey.of(arranged(11, 10, 9, 8, 7, 6, 5, 4, 3, 2, 1, 0));
        assertThat(survey.order()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
        assertThat(survey.misplaced()).isEmpty();
    }

    @Test
    void namesACopiedFile() {
        SweepSurvey survey = SweepSurvey.of(arranged(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 5));
        assertThat(survey.strays())
                .containsExactly(new Stray(12, Stray.Reason.DUPLICATE, "is the same picture as", OptionalInt.of(5)));
    }

    @Test
    void namesAFrameTakenTwice() {
        BracketPlan again = new BracketPlan(
                480, 320, 12, 6, 4, PLAN.motion(), 0.05, PLAN.noise(), PLAN.rig(), PLAN.span(), List.of());
        List<FrameSurvey> frames = new ArrayList<>(SWEEP);
        frames.add(
                7,
                FrameSurveyor.survey(
                        Surveys.luma(Bracket.of(Subjects.mineral(5), again).encoded(6)), 1));
        SweepSurvey survey = SweepSurvey.of(frames);
        assertThat(survey.strays())
                .containsExactly(new Stray(7, Stray.Reason.DUPLICATE, "repeats the focus of", OptionalInt.of(6)));
    }

    @Test
    void namesAShakenFrame() {
        List<FrameSurvey> frames = new ArrayList<>(SWEEP);
        Picture still = Bracket.of(Subjects.mineral(5), PLAN).encoded(6);
        frames.set(6, FrameSurveyor.survey(shaken(Surveys.luma(still)), 1));
        SweepSurvey survey = SweepSurvey.of(frames);
        assertThat(survey.shaken()).containsExactly(6);
        assertThat(survey.order()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
        assertThat(SweepSurvey.of(SWEEP).shaken()).isEmpty();
    }

    @Test
    void findsTheGapThatMissingFramesLeave() {
        Coverage coverage =
                SweepSurvey.of(arranged(0, 1, 2, 3, 4, 7, 8, 9, 10, 11)).coverage();
        assertThat(coverage.gaps()).hasSize(1);
        assertThat(coverage.gaps().get(0).before()).isEqualTo(4);
        assertThat(coverage.gaps().get(0).after()).isEqualTo(5);
        assertThat(coverage.gaps().get(0).steps()).isBetween(2.2, 4.0);
    }

    @Test
    void saysWhenTheSweepBeganTooLate() {
        double whole = SweepSurvey.of(SWEEP).coverage().openAtFirst();
        double late =
                SweepSurvey.of(arranged(4, 5, 6, 7, 8, 9, 10, 11)).coverage().openAtFirst();
        assertThat(whole).isLessThan(0.01);
        assertThat(late).isGreaterThan(0.02);
    }

    @Test
    void setsAsideWhatDoesNotBelong() {
        List<FrameSurvey> frames = new ArrayList<>(SWEEP);
        frames.add(
                0, Surveys.of(Subjects.shell(9), BracketPlan.of(480, 320, 1, 9)).get(0));
        frames.add(5, FrameSurveyor.survey(new Plane(480, 320), 1));
        frames.add(9, FrameSurveyor.survey(white(), 1));
        frames.add(
                Surveys.of(Subjects.mineral(5), BracketPlan.of(320, 480, 1, 3)).get(0));
        assertThat(SweepSurvey.of(frames).strays())
                .extracting(s -> s.frame() + " " + s.reason())
                .containsExactly("0 OTHER_SUBJECT", "5 BLACK", "9 BLOWN", "15 OTHER_SIZE");
    }

    @Test
    void takesOneFrameAndTwo() {
        assertThat(SweepSurvey.of(arranged(3)).order()).containsExactly(0);
        assertThat(SweepSurvey.of(arranged(3, 4)).order()).containsExactly(0, 1);
        assertThatThrownBy(() -> SweepSurvey.of(List.of())).isInstanceOf(IllegalArgumentException.class);
    }

    private static List<FrameSurvey> arranged(int... order) {
        return Arrays.stream(order).mapToObj(SWEEP::get).toList();
    }

    /** As when the camera moves five pixels to the side while the shutter is open. */
    private static Plane shaken(Plane still) {
        Plane moved = new Plane(still.width(), still.height());
        for (int y = 0; y < still.height(); y++) {
            for (int x = 0; x < still.width(); x++) {
                float sum = 0;
                for (int k = -2; k <= 2; k++) sum += still.at(Math.min(still.width() - 1, Math.max(0, x + k)), y);
                moved.set(x, y, sum / 5);
            }
        }
        return moved;
    }

    private static Plane white() {
        Plane plane = new Plane(480, 320);
        Arrays.fill(plane.samples(), 1);
        return plane;
    }
}
