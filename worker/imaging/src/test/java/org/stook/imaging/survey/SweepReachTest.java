package org.stook.imaging.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.subject.Subjects;

/** Rendered sweeps of which is known that they are whole, and the same with frames left out. */
class SweepReachTest {
    /**
     * The last column is how many frames are cut off the far end, so that at least a twentieth of the subject lies beyond it
     * (so deep does a shell reach with its last rim only).
     */
    @ParameterizedTest
    @CsvSource({"mineral, 600, 400, 8, 2", "shell, 600, 400, 8, 3", "watch, 600, 400, 8, 2", "shell, 900, 600, 12, 4"})
    void raisesNoFalseAlarmAndFindsWhatIsLeftOut(String subject, int width, int height, int frames, int cut) {
        List<FrameSurvey> sweep = Surveys.of(Subjects.named(subject, 5), BracketPlan.of(width, height, frames, 5));
        staysCalm(SweepSurvey.of(sweep));
        for (int gone = 3; gone < 5; gone++) {
            List<Coverage.Gap> gaps = SweepSurvey.of(Surveys.without(sweep, gone, gone + 1))
                    .coverage()
                    .gaps();
            assertThat(gaps).hasSize(1);
            assertThat(gaps.get(0).before()).isEqualTo(gone - 1);
            assertThat(gaps.get(0).after()).isEqualTo(gone);
            assertThat(gaps.get(0).steps()).isBetween(2.0, 3.2);
        }
        // A short sweep tells too little of how even its steps are.
        if (frames >= 12) findsOneMissing(sweep, frames / 2);
        SweepSurvey broken = SweepSurvey.of(sweep.subList(0, frames - cut));
        assertThat(broken.coverage().isOpenAtLast()).isTrue();
        assertThat(broken.coverage().openAtFirst()).isLessThan(0.03);
    }

    /** Where a motor makes the steps, a single one that is twice as wide stands out. */
    private static void findsOneMissing(List<FrameSurvey> sweep, int gone) {
        List<Coverage.Gap> gaps =
                SweepSurvey.of(Surveys.without(sweep, gone)).coverage().gaps();
        assertThat(gaps).hasSize(1);
        assertThat(gaps.get(0).before()).isEqualTo(gone - 1);
        assertThat(gaps.get(0).after()).isEqualTo(gone);
    }

    private static void staysCalm(SweepSurvey whole) {
        assertThat(whole.coverage().gaps()).isEmpty();
        assertThat(whole.coverage().openAtFirst()).isLessThan(0.03);
        assertThat(whole.coverage().openAtLast()).isLessThan(0.03);
        assertThat(whole.shaken()).isEmpty();
        assertThat(whole.strays()).isEmpty();
    }
}
