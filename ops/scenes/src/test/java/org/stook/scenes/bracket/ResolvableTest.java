package org.stook.scenes.bracket;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.stook.scenes.subject.Subject;
import org.stook.scenes.subject.Subjects;

class ResolvableTest {
    /** So small a circle that everything is in focus. */
    private static final BracketPlan SHARP =
            BracketPlan.of(300, 200, 5, 1).still().withRig(Rig.USUAL.withCircle(0.002));

    static Stream<Subject> all() {
        return Subjects.all(6).stream();
    }

    @ParameterizedTest
    @MethodSource("all")
    void everythingInFocusIsTheTruth(Subject subject) {
        Bracket bracket = Bracket.of(subject, SHARP);
        Picture picture = bracket.clean(2);
        float[] truth = bracket.truth().linear().planes()[1];
        float worst = 0;
        for (int p = 0; p < truth.length; p++) worst = Math.max(worst, Math.abs(picture.planes()[1][p] - truth[p]));
        assertThat(worst).isLessThan(2e-5f);
    }

    /**
     * Looked up half a pixel aside the pixels tell what is drawn there, to a twentieth of the detail's power even in a
     * picture of 200 rows: it stays below what pixels can hold.
     */
    @ParameterizedTest
    @MethodSource("all")
    void pixelsHoldAllTheDetailThereIs(Subject subject) {
        Bracket bracket = Bracket.of(subject, SHARP);
        Picture here = bracket.look(bracket.pose(2), 2);
        Picture aside = bracket.look(new Pose(1, 0, 0.5, 0.5, 149.5, 99.5), 2);
        double error = 0;
        double detail = 0;
        for (int y = 10; y < 190; y++) {
            for (int x = 10; x < 290; x++) {
                double wanted = aside.at(1, x, y);
                error += Math.pow(Lookup.lanczos(here.planes()[1], 300, x - 0.5, y - 0.5) - wanted, 2);
                detail += Math.pow(here.at(1, x, y) - here.at(1, x + 1, y), 2);
            }
        }
        assertThat(error).isLessThan(0.05 * detail);
    }
}
