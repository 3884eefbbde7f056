package org.stook.imaging.registration;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Placement;

class RegistrarTest {
    private static final int WIDTH = 480;
    private static final int HEIGHT = 320;

    @Test
    void findsBreathingAndShiftToATenthOfAPixel() throws Exception {
        List<Placement> truth = breathing(9, 0.004);
        SlantedPlate plate = plate(truth);
        Registration found = new Registrar(2).register(plate, 4);
        Errors errors = Errors.of(truth, found, 4, WIDTH, HEIGHT);
        assertThat(found.model()).isEqualTo(Model.SIMILARITY);
        assertThat(errors.rms()).isLessThan(0.1);
        assertThat(errors.worst()).isLessThan(0.4);
        assertThat(found.frames()).allMatch(p -> p.doubt().isEmpty());
    }

    private static SlantedPlate plate(List<Placement> truth) {
        return new SlantedPlate(
                WIDTH, HEIGHT, truth, SlantedPlate.evenFocus(truth.size()), SlantedPlate.steady(truth.size()));
    }

    private static List<Placement> breathing(int frames, double step) {
        List<Placement> truth = new ArrayList<>();
        for (int f = 0; f < frames; f++) {
            truth.add(Placement.similarity(
                    1 + step * f, 0.0004 * f, 0.4 * f, -0.25 * f, WIDTH / 2.0 + 9, HEIGHT / 2.0 - 5));
        }
        return truth;
    }
}
