package org.stook.imaging.survey;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.imaging.frame.Plane;
import org.stook.imaging.survey.BorderDetail.Side;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Motion;
import org.stook.scenes.subject.Subjects;

class FramingTest {
    private static final int FRAMES = 9;

    @ParameterizedTest
    @ValueSource(strings = {"watch", "spray"})
    void aSubjectWithRoomAroundItIsWellFramed(String subject) {
        Framing framing = framing(frames(subject, 0.003), 0, 0, 600, 400);
        assertThat(framing.leaves()).isEmpty();
        assertThat(framing.tight()).isEmpty();
        assertThat(framing.breathing()).isCloseTo(0.003 * (FRAMES - 1), within(0.01));
    }

    @Test
    void aSubjectCutOffAtOneSideLeavesTheFrameThere() {
        List<Plane> shell = frames("shell", 0.003);
        assertThat(framing(shell, 0, 0, 600, 400).leaves()).isEmpty();
        assertThat(framing(shell, 150, 0, 450, 400).leaves()).containsExactly(Side.LEFT);
        assertThat(framing(shell, 0, 0, 450, 400).leaves()).containsExactly(Side.RIGHT);
        assertThat(framing(shell, 0, 90, 600, 310).leaves()).containsExactly(Side.TOP);
        assertThat(framing(shell, 0, 0, 600, 310).leaves()).containsExactly(Side.BOTTOM);
    }

    @Test
    void theBorderIsTightWhereTheChangeOfScaleTakesMoreThanThereIs() {
        Framing framing = framing(frames("shell", 0.008), 90, 0, 510, 400);
        assertThat(framing.leaves()).isEmpty();
        assertThat(framing.tight()).contains(Side.LEFT);
        assertThat(framing.breathing()).isCloseTo(0.066, within(0.012));
    }

    @Test
    void ofAPictureOfAPartNothingIsSaid() {
        Framing framing = framing(frames("mineral", 0.003), 200, 120, 210, 140);
        assertThat(framing.leaves()).isEmpty();
        assertThat(framing.tight()).isEmpty();
    }

    /** "balls" of github.com/wcy199705/DfFintheWild (MIT licence): the lens breathes by about 6 %; thumbnails tell it coarsely. */
    @Test
    @Tag("published-data")
    void theBreathingOfRealFramesIsMeasured() throws IOException {
        List<Plane> thumbnails =
                Surveys.published(
                                "balls_10f",
                                IntStream.range(0, 10)
                                        .mapToObj("%02d.jpg"::formatted)
                                        .toList())
                        .stream()
                        .map(FrameSurvey::thumbnail)
                        .toList();
        assertThat(Breathing.of(thumbnails)).isCloseTo(0.06, within(0.02));
    }

    private static List<Plane> frames(String subject, double breathing) {
        BracketPlan plan = BracketPlan.of(600, 400, FRAMES, 3).withMotion(new Motion(breathing, 2, 0.03));
        Bracket bracket = Bracket.of(Subjects.named(subject, 3), plan);
        return IntStream.range(0, FRAMES)
                .mapToObj(f -> Surveys.luma(bracket.encoded(f)))
                .toList();
    }

    private static Framing framing(List<Plane> frames, int x, int y, int width, int height) {
        List<Plane> parts =
                frames.stream().map(p -> cut(p, x, y, width, height)).toList();
        List<FrameSurvey> surveys =
                parts.stream().map(p -> FrameSurveyor.survey(p, 1)).toList();
        List<BorderDetail> borders = IntStream.range(0, FRAMES)
                .mapToObj(i ->
                        BorderDetail.of(parts.get(i), surveys.get(i).exposure().noise()))
                .toList();
        return Framing.of(surveys, borders, SweepSurvey.of(surveys));
    }

    private static Plane cut(Plane in, int left, int top, int width, int height) {
        Plane out = new Plane(width, height);
        for (int y = 0; y < height; y++) {
            for (int x = 0; x < width; x++) out.set(x, y, in.at(left + x, top + y));
        }
        return out;
    }
}
