package org.stook.imaging.survey;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Real sweeps, whole and with frames left out, against the focus positions that were published with them. */
@Tag("published-data")
class PublishedSweepsTest {
    /**
     * "balls" of github.com/wcy199705/DfFintheWild (commit 8ba434f5, MIT licence). Steps of focus (differences of the
     * reciprocals of focus_distance.txt) differ by up to three times, but none is a gap.
     */
    @Test
    void findsNoGapInAHandTurnedSweep() throws IOException {
        List<FrameSurvey> balls = balls();
        SweepSurvey whole = SweepSurvey.of(balls);
        assertThat(whole.coverage().gaps()).isEmpty();
        assertThat(whole.coverage().openAtFirst()).isLessThan(0.03);
        assertThat(whole.coverage().openAtLast()).isLessThan(0.03);
        assertThat(whole.shaken()).isEmpty();
        double[] powers = Files.readAllLines(Surveys.folder("balls_10f").resolve("focus_distance.txt")).stream()
                .filter(line -> !line.isBlank())
                .mapToDouble(line -> 1 / Double.parseDouble(line.strip()))
                .toArray();
        assertThat(correlation(whole.positions(), powers)).isGreaterThan(0.98);
    }

    @ParameterizedTest
    @ValueSource(ints = {4, 5, 6})
    void findsWhereTwoFramesOfAHandTurnedSweepAreMissing(int gone) throws IOException {
        List<Coverage.Gap> gaps = SweepSurvey.of(Surveys.without(balls(), gone, gone + 1))
                .coverage()
                .gaps();
        assertThat(gaps).hasSize(1);
        assertThat(gaps.get(0).before()).isEqualTo(gone - 1);
        assertThat(gaps.get(0).after()).isEqualTo(gone);
    }

    /**
     * A light-field refocus stack of github.com/behnam/python-lfp-reader (commit d1a50810, GPL-3.0). By its
     * focus_lambda.csv the last step is 3.1 where the median one is 0.9: a gap in the whole stack as well.
     */
    @Test
    void findsTheGapThatALightFieldStackHas() throws IOException {
        Coverage whole = SweepSurvey.of(newspaper()).coverage();
        assertThat(whole.gaps()).hasSize(1);
        assertThat(whole.gaps().get(0).before()).isEqualTo(10);
        assertThat(whole.gaps().get(0).after()).isEqualTo(11);
        assertThat(whole.openAtFirst()).isLessThan(0.03);
        assertThat(whole.openAtLast()).isLessThan(0.03);
    }

    @ParameterizedTest
    @ValueSource(ints = {3, 4, 5, 6, 7, 8})
    void findsWhereTwoFramesOfALightFieldStackAreMissing(int gone) throws IOException {
        SweepSurvey survey = SweepSurvey.of(Surveys.without(newspaper(), gone, gone + 1));
        assertThat(survey.order()).containsExactly(IntStream.range(0, 10).toArray());
        assertThat(survey.strays()).isEmpty();
        List<Coverage.Gap> gaps = survey.coverage().gaps();
        assertThat(gaps).hasSize(2);
        assertThat(gaps.get(0).before()).isEqualTo(gone - 1);
        assertThat(gaps.get(0).after()).isEqualTo(gone);
        assertThat(gaps.get(1).after()).isEqualTo(9);
    }

    private static List<FrameSurvey> balls() throws IOException {
        return Surveys.published(
                "balls_10f",
                IntStream.range(0, 10).mapToObj("%02d.jpg"::formatted).toList());
    }

    private static List<FrameSurvey> newspaper() throws IOException {
        List<String> lines = Files.readAllLines(Surveys.folder("newspaper_12f").resolve("focus_lambda.csv"));
        Comparator<String[]> byFocus = Comparator.comparingDouble(cells -> -Double.parseDouble(cells[1]));
        return Surveys.published(
                "newspaper_12f",
                lines.stream()
                        .skip(1)
                        .map(line -> line.split(",", 2))
                        .sorted(byFocus)
                        .map(cells -> cells[0])
                        .toList());
    }

    /** Pearson's coefficient. */
    private static double correlation(double[] a, double[] b) {
        assertThat(a).hasSameSizeAs(b);
        double ma =
                IntStream.range(0, a.length).mapToDouble(i -> a[i]).average().orElseThrow();
        double mb =
                IntStream.range(0, b.length).mapToDouble(i -> b[i]).average().orElseThrow();
        double ab = 0;
        double aa = 0;
        double bb = 0;
        for (int i = 0; i < a.length; i++) {
            ab += (a[i] - ma) * (b[i] - mb);
            aa += (a[i] - ma) * (a[i] - ma);
            bb += (b[i] - mb) * (b[i] - mb);
        }
        return ab / Math.sqrt(aa * bb);
    }
}
