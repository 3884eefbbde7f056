package org.stook.imaging.placing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Plane;

class PlacerTest {
    private static final Area AREA = new Area(8, 8, 46, 38);

    @Test
    void identityCopiesTheArea() {
        Frame source = wave(0.31);
        Frame placed = place(source, Placement.identity());
        assertThat(placed.plane(0).at(5, 6)).isEqualTo(source.plane(0).at(13, 14));
    }

    @Test
    void flatStaysFlatUnderAnyPlacement() {
        Frame flat = new Frame(List.of(filled(0.4f)));
        Frame placed = place(flat, Placement.similarity(1.01, 0.02, 0.3, -0.4, 32, 28));
        for (float v : placed.plane(0).samples()) assertThat(v).isCloseTo(0.4f, within(1e-6f));
    }

    /** A sinusoid of known frequency and phase is the truth; ten taps keep it to within 1.1 % up to 0.25 cycles a pixel. */
    @ParameterizedTest
    @ValueSource(doubles = {0.05, 0.125, 0.25})
    void halfPixelShiftKeepsContrast(double cyclesPerPixel) {
        Frame placed = place(wave(cyclesPerPixel), Placement.affine(1, 0, 0.5, 0, 1, 0));
        double worst = 0;
        for (int x = 0; x < AREA.width(); x++) {
            double expected = 0.5 + 0.4 * Math.sin(2 * Math.PI * cyclesPerPixel * (x + AREA.x() + 0.5));
            worst = Math.max(worst, Math.abs(placed.plane(0).at(x, 3) - expected));
        }
        assertThat(worst).isLessThan(0.4 * 0.011);
    }

    /** The truth is the wave itself where the placement puts each pixel; twice the bound above, for two directions. */
    @ParameterizedTest
    @MethodSource("placements")
    void findsEachPointWhereThePlacementPutsIt(Placement placement) {
        Frame placed = place(new Frame(List.of(slanting())), placement);
        double worst = 0;
        for (int y = 0; y < AREA.height(); y++) {
            for (int x = 0; x < AREA.width(); x++) {
                double px = x + AREA.x();
                double py = y + AREA.y();
                double expected = slanting(placement.x(px, py), placement.y(px, py));
                worst = Math.max(worst, Math.abs(placed.plane(0).at(x, y) - expected));
            }
        }
        assertThat(worst).isLessThan(2 * 0.4 * 0.011);
    }

    static List<Placement> placements() {
        return List.of(
                Placement.similarity(0.97, 0.0001, 0.3, -0.4, 32, 28),
                Placement.similarity(1.02, 0.01, 0.3, -0.4, 32, 28),
                Placement.similarity(1.0, -0.04, 0.5, 0.5, 32, 28),
                Placement.affine(1.01, 0.004, -0.3, -0.006, 0.99, 0.4),
                Placement.of(1.01, 0.004, -0.3, -0.006, 0.99, 0.4, 2e-5, -1e-5, 1));
    }

    @Test
    void aPartIsDrawnAsInTheWhole() {
        Frame source = wave(0.2);
        Placement p = Placement.similarity(0.99, -0.01, 0.7, 0.2, 32, 28);
        Frame whole = place(source, p);
        Area part = new Area(AREA.x() + 11, AREA.y() + 17, 20, 13);
        float[][][] drawn = new float[1][part.height()][part.width()];
        new Placer().draw(part, SourceRows.of(source), 64, p, Placer.Channels.sharp(1), drawn);
        for (int y = 0; y < part.height(); y++) {
            for (int x = 0; x < part.width(); x++) {
                assertThat(drawn[0][y][x]).isCloseTo(whole.plane(0).at(11 + x, 17 + y), within(3e-4f));
            }
        }
    }

    private static Frame place(Frame source, Placement placement) {
        Frame target = Frame.blank(AREA.width(), AREA.height(), source.channels());
        new Placer().draw(AREA, SourceRows.of(source), source.width(), placement, target, 0);
        return target;
    }

    private static Plane filled(float value) {
        Plane plane = new Plane(64, 56);
        java.util.Arrays.fill(plane.samples(), value);
        return plane;
    }

    private static double slanting(double x, double y) {
        return 0.5 + 0.4 * Math.sin(2 * Math.PI * (0.13 * x + 0.09 * y));
    }

    private static Plane slanting() {
        Plane plane = new Plane(64, 56);
        for (int y = 0; y < 56; y++) {
            for (int x = 0; x < 64; x++) plane.set(x, y, (float) slanting(x, y));
        }
        return plane;
    }

    private static Frame wave(double cyclesPerPixel) {
        Plane plane = new Plane(64, 56);
        for (int y = 0; y < 56; y++) {
            for (int x = 0; x < 64; x++) {
                plane.set(x, y, (float) (0.5 + 0.4 * Math.sin(2 * Math.PI * cyclesPerPixel * x)));
            }
        }
        return new Frame(List.of(plane));
    }
}
