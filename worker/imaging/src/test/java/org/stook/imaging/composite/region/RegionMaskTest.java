package org.stook.imaging.composite.region;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.stook.imaging.composite.region.RegionOverride.Point;
import org.stook.imaging.frame.Area;

class RegionMaskTest {
    @Test
    void risesSmoothlyAcrossTheFeather() {
        RegionMask mask = mask(8, 10, 10, 50, 10, 50, 50, 10, 50);
        assertThat(mask.weight(30, 30)).isEqualTo(1);
        assertThat(mask.weight(10, 30)).isEqualTo(0.5);
        assertThat(mask.weight(8, 30)).isCloseTo(0.15625, within(1e-12)); // smoothstep of a quarter
        assertThat(mask.weight(12, 30)).isCloseTo(1 - 0.15625, within(1e-12));
        assertThat(mask.weight(5, 30)).isZero();
        assertThat(mask.weight(5, 5)).isZero();
    }

    @Test
    void withoutAFeatherTheEdgeIsHard() {
        RegionMask mask = mask(0, 10, 10, 50, 10, 50, 50);
        assertThat(mask.weight(40, 20)).isEqualTo(1);
        assertThat(mask.weight(20, 40)).isZero();
    }

    @Test
    void aNotchStaysOutside() {
        RegionMask mask = mask(2, 0, 0, 40, 0, 40, 40, 20, 10, 0, 40);
        assertThat(mask.weight(20, 30)).isZero();
        assertThat(mask.weight(20, 5)).isEqualTo(1);
    }

    @Test
    void boundsHoldTheFeatherAndStayWithinTheArea() {
        RegionMask mask = mask(8, 10, 10, 50, 10, 50, 50, 10, 50);
        assertThat(mask.bounds(new Area(0, 0, 100, 40))).contains(new Area(6, 6, 49, 34));
        assertThat(mask.bounds(new Area(60, 60, 10, 10))).isEmpty();
    }

    /** The area of a polygon by the shoelace formula is what the weights add up to. */
    @Test
    void theWeightsAddUpToTheArea() {
        RegionMask mask = mask(6, 20, 20, 120, 35, 100, 90, 40, 110);
        double sum = 0;
        for (int y = 0; y < 140; y++) for (int x = 0; x < 140; x++) sum += mask.weight(x, y);
        double shoelace = 0.5
                * Math.abs((20 * 35 - 120 * 20) + (120 * 90 - 100 * 35) + (100 * 110 - 40 * 90) + (40 * 20 - 20 * 110));
        assertThat(sum).isCloseTo(shoelace, within(0.005 * shoelace));
    }

    @Test
    void refusesWhatIsNoRegion() {
        List<Point> line = List.of(new Point(0, 0), new Point(5, 5));
        List<Point> wild = List.of(new Point(0, 0), new Point(5, Double.NaN), new Point(5, 0));
        assertThatThrownBy(() -> new RegionOverride("a.jpg", line, 8)).hasMessageContaining("3 to 500 corners, got 2");
        assertThatThrownBy(() -> new RegionOverride("a.jpg", wild, 8)).hasMessageContaining("NaN");
        assertThatThrownBy(() -> mask(900, 0, 0, 5, 0, 5, 5)).hasMessageContaining("0 to 500 pixels, got 900");
    }

    private static RegionMask mask(double feather, double... xy) {
        List<Point> outline = new ArrayList<>();
        for (int i = 0; i < xy.length; i += 2) outline.add(new Point(xy[i], xy[i + 1]));
        return new RegionMask(new RegionOverride("a.jpg", outline, feather));
    }
}
