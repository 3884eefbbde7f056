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
     * The last column is the least share of tiles to be found open when the last two frames are missing: of subjects whose
     * depths are all filled. The watch's parts stand apart in depth and may look like a backdrop.
     */
    @ParameterizedTest
    @CsvSource({
        "mineral, 600, 400, 8, 0.3",
        "shell, 600, 400, 8, 0.3",
        "watch, 600, 400, 8, 0",
        "shell, 1200, 800, 12, 0.01"
    })
    void raisesNoFalseAlarmAndFindsWhatIsLeftOut(String subject, int width, int height, int frames, double open) {
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
        SweepSurvey broken = SweepSurvey.of(Surveys.without(sweep, frames - 1, frames - 2));
        assertThat(broken.coverage().openAtLast()).isGreaterThanOrEqualTo(open);
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
        assertThat(whole.coverage().openAtLast()).isLessThan(0.01);
        assertThat(whole.shaken()).isEmpty();
        assertThat(whole.strays()).isEmpty();
    }
}
