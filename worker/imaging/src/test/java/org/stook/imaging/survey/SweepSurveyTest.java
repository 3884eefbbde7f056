package org.stook.imaging.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.subject.Subjects;

class SweepSurveyTest {
    private static final List<FrameSurvey> SWEEP = surveys(BracketPlan.of(480, 320, 12, 3));

    @Test
    void keepsAGoodSweepAsItIs() {
        SweepSurvey survey = SweepSurvey.of(SWEEP);
        assertThat(survey.order()).containsExactly(0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11);
        assertThat(survey.strays()).isEmpty();
        assertThat(survey.misplaced()).isEmpty();
    }

    @Test
    void restoresTwoSwappedFramesAndNamesThem() {
        List<FrameSurvey> frames = new ArrayList<>(SWEEP);
        frames.set(3, SWEEP.get(8));
        frames.set(8, SWEEP.get(3));
        SweepSurvey survey = SweepSurvey.of(frames);
        assertThat(survey.order()).containsExactly(0, 1, 2, 8, 4, 5, 6, 7, 3, 9, 10, 11);
        assertThat(survey.misplaced()).containsExactly(3, 8);
    }

    static List<FrameSurvey> surveys(BracketPlan plan) {
        Bracket bracket = Bracket.of(Subjects.mineral(5), plan);
        List<FrameSurvey> result = new ArrayList<>();
        for (int f = 0; f < plan.frames(); f++) result.add(FrameSurveyor.survey(luma(bracket.encoded(f)), 1));
        return result;
    }

    static Plane luma(Picture picture) {
        Plane plane = new Plane(picture.width(), picture.height());
        float[][] p = picture.planes();
        for (int i = 0; i < plane.samples().length; i++) {
            plane.samples()[i] = 0.2126f * p[0][i] + 0.7152f * p[1][i] + 0.0722f * p[2][i];
        }
        return plane;
    }
}
