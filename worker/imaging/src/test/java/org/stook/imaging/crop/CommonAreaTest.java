package org.stook.imaging.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

class CommonAreaTest {
    private static final CropRule KEEP = CropRule.keepRatio();

    @Test
    void oneFrameKeepsAllButTheSupport() {
        Area area = new CommonArea(600, 400, 0, KEEP)
                .of(List.of(Placement.identity()))
                .orElseThrow();
        assertThat(area).isEqualTo(new Area(0, 0, 600, 400));
        Area inner = new CommonArea(600, 400, 3, KEEP)
                .of(List.of(Placement.identity()))
                .orElseThrow();
        assertThat(Area.whole(600, 400).contains(inner)).isTrue();
        assertThat(inner.height()).isBetween(393, 394);
    }

    /** Lost share for a change of scale s about the centre: 1 - 1/s per dimension, arithmetic of the geometry. */
    @ParameterizedTest
    @CsvSource({"1.05, 0.0476", "1.06, 0.0566", "1.11, 0.0991"})
    void breathingCostsTheScaleItTakes(double scale, double lost) {
        Placement breathed = Placement.similarity(scale, 0, 0, 0, 2999.5, 1999.5);
        Area area = new CommonArea(6000, 4000, 0, KEEP)
                .of(List.of(Placement.identity(), breathed))
                .orElseThrow();
        assertThat(1 - area.width() / 6000.0).isCloseTo(lost, within(0.0006));
        assertThat((double) area.width() / area.height()).isCloseTo(1.5, within(0.0005));
        LostBorder border = LostBorder.of(6000, 4000, area);
        assertThat(border.percent()).isCloseTo(100 * (1 - 1 / (scale * scale)), within(0.1));
        assertThat(border.left()).isCloseTo(border.right(), within(1));
    }

    @Test
    void everyCornerLiesInsideEveryFrame() {
        List<Placement> placements = List.of(
                Placement.similarity(1.02, 0.03, 12, -7, 300, 200),
                Placement.similarity(0.97, -0.02, -9, 4, 300, 200),
                Placement.of(1, 0.001, 2, -0.002, 1.01, 3, 1e-5, 2e-5, 1));
        Area a = new CommonArea(600, 400, 3, KEEP).of(placements).orElseThrow();
        for (Placement p : placements) {
            for (int cx : new int[] {a.x(), a.x() + a.width() - 1}) {
                for (int cy : new int[] {a.y(), a.y() + a.height() - 1}) {
                    assertThat(p.x(cx, cy)).isBetween(3.0, 596.0);
                    assertThat(p.y(cx, cy)).isBetween(3.0, 396.0);
                }
            }
        }
    }

    @Test
    void aShiftLeavesTheOverlap() {
        Area area = new CommonArea(600, 400, 0, new CropRule(OptionalDouble.of(1), 0))
                .of(List.of(Placement.identity(), Placement.affine(1, 0, 100, 0, 1, 0)))
                .orElseThrow();
        assertThat(area.width()).isEqualTo(400);
        assertThat(area.height()).isEqualTo(400);
        assertThat(area.x() + area.width()).isLessThanOrEqualTo(500);
    }

    @Test
    void framesWithNothingInCommonHaveNoArea() {
        assertThat(new CommonArea(600, 400, 0, KEEP)
                        .of(List.of(Placement.identity(), Placement.affine(1, 0, 700, 0, 1, 0))))
                .isEmpty();
    }
}
