package org.stook.comparison.stack;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Truth;
import org.stook.scenes.file.FrameFormat;
import org.stook.scenes.subject.Subjects;

class StackMeasuresTest {
    private static final SceneStack STACK =
            new SceneStack("shell", Bracket.of(Subjects.shell(1), BracketPlan.of(96, 64, 4, 3)), FrameFormat.JPEG);

    /** Closed form: a sine wave of 0.2 cycles a pixel, moved by a fraction of a pixel. */
    @ParameterizedTest
    @CsvSource({"LANCZOS, 0.02", "NEARLY_EXACT, 0.001", "CUBIC, 0.03"})
    void placingMovesASineWave(Interpolation kernel, float tolerance) {
        Plane wave = new Plane(64, 48);
        for (int y = 0; y < 48; y++) for (int x = 0; x < 64; x++) wave.set(x, y, wave(x + 0.7 * y));
        Frame placed = Resample.place(
                new Frame(List.of(wave)), Placement.affine(1, 0, 0.37, 0, 1, -1.6), new Area(12, 12, 40, 24), kernel);

        for (int y = 0; y < 24; y++) {
            for (int x = 0; x < 40; x++) {
                assertThat(placed.plane(0).at(x, y))
                        .isCloseTo(wave(x + 12.37 + 0.7 * (y + 12 - 1.6)), within(tolerance));
            }
        }
    }

    @Test
    void theOraclePicksTheFrameThatIsNearestTheTruth() {
        Frame truth = Frame.blank(64, 32, 3);
        Oracle oracle = new Oracle(truth);
        oracle.add(spoilt(0, 32));
        oracle.add(spoilt(32, 64));

        for (int x = 0; x < 64; x++)
            assertThat(oracle.composite().plane(1).at(x, 16)).isZero();
    }

    @Test
    void registrationErrorIsTheDistanceToTheExactPlacement() {
        Truth truth = STACK.bracket().truthIn(2);
        Map<String, Placement> found = new LinkedHashMap<>();
        for (int i = 0; i < 4; i++) {
            double off = i == 2 ? 0 : i == 3 ? 0.5 : 0.1;
            found.put(STACK.fileName(i), Placement.of(truth.placement(i)).then(Placement.affine(1, 0, off, 0, 1, 0)));
        }
        RegistrationError error = RegistrationError.of(found, STACK, truth);

        assertThat(error.rms()).isCloseTo(Math.sqrt((0.01 + 0.01 + 0.25) / 3), within(1e-9));
        assertThat(error.worstCorner()).isCloseTo(0.5, within(1e-9));
    }

    @Test
    void theTruthIsPerfectlyFaithful() {
        Truth truth = STACK.bracket().truth();
        Area whole = Area.whole(96, 64);
        Frame shifted = SceneStack.frame(truth.encoded());
        for (int c = 0; c < 3; c++)
            for (int i = 0; i < 96 * 64; i++) shifted.plane(c).samples()[i] += 0.01f;

        assertThat(Fidelity.of(SceneStack.frame(truth.encoded()), whole, truth, whole)
                        .all())
                .isInfinite();
        assertThat(Fidelity.of(shifted, whole, truth, whole).subject()).isCloseTo(40, within(0.01));
    }

    @Test
    void aFileOutOfOrderKeepsTheRankOfWhatItShows() {
        SceneStack unruly = new SceneStack("unruly", STACK.bracket(), FrameFormat.JPEG, List.of(0, 2, 1, 3, 3));

        assertThat(unruly.files()).isEqualTo(5);
        assertThat(unruly.rank(unruly.fileName(1))).isEqualTo(2);
        assertThat(unruly.rank(unruly.fileName(4))).isEqualTo(3);
    }

    private static float wave(double x) {
        return (float) (0.5 + 0.4 * Math.sin(2 * Math.PI * 0.2 * x));
    }

    private static Frame spoilt(int from, int to) {
        Frame frame = new Frame(List.of(new Plane(64, 32), new Plane(64, 32), new Plane(64, 32)));
        for (int y = 0; y < 32; y++)
            for (int x = from; x < to; x++) frame.plane(1).set(x, y, 0.3f);
        return frame;
    }
}
