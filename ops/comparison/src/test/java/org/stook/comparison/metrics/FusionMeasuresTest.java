package org.stook.comparison.metrics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

class FusionMeasuresTest {
    private static final Plane SHARP = FidelityTest.random(80, 64, 1, 0.1);
    private static final TileSharpness FLAT = TileSharpness.of(new Plane(SHARP.width(), SHARP.height()), 16);
    private static final Plane SOFT = smoothed(SHARP);
    private static final Plane OTHER = FidelityTest.random(80, 64, 5, 0.1);

    /** The greatest value that the constants of the paper allow: 0.9994 / (1 + e^-7.5) times 0.9879 / (1 + e^-4.4). */
    private static final double ALL_KEPT = 0.9994 / (1 + Math.exp(-7.5)) * 0.9879 / (1 + Math.exp(-4.4));

    @Test
    void keepingEveryEdgeGivesTheGreatestValueOfThePaper() {
        assertThat(EdgePreservation.of(SHARP, SHARP, SHARP)).isCloseTo(ALL_KEPT, within(1e-9));
        assertThat(FusionQuality.weighted(SHARP, SHARP, SHARP)).isCloseTo(1, within(1e-9));
    }

    @Test
    void theSharperSourceIsTheBetterChoice() {
        assertThat(EdgePreservation.of(SHARP, SOFT, SHARP)).isGreaterThan(EdgePreservation.of(SHARP, SOFT, SOFT));
        assertThat(FusionQuality.weighted(SHARP, SOFT, SHARP)).isGreaterThan(FusionQuality.weighted(SHARP, SOFT, SOFT));
    }

    @Test
    void theOrderOfTheSourcesDoesNotMatter() {
        assertThat(EdgePreservation.of(SHARP, SOFT, OTHER))
                .isCloseTo(EdgePreservation.of(SOFT, SHARP, OTHER), within(1e-12));
        assertThat(FusionQuality.edgeDependent(SHARP, SOFT, OTHER))
                .isCloseTo(FusionQuality.edgeDependent(SOFT, SHARP, OTHER), within(1e-12));
    }

    @Test
    void strangersScoreLow() {
        assertThat(EdgePreservation.of(SHARP, SHARP, OTHER)).isLessThan(0.3);
        assertThat(FusionQuality.weighted(SHARP, SHARP, OTHER)).isLessThan(0.2);
    }

    @Test
    void noiseIsMeasuredWhateverTheShading() {
        Plane shaded = FidelityTest.random(200, 200, 3, 0.02);
        for (int i = 0; i < 200 * 200; i++) shaded.samples()[i] += 0.001f * (i % 200);

        assertThat(Noise.sigma(shaded, Area.whole(200, 200))).isCloseTo(0.02, within(3e-4));
        assertThat(Noise.immerkaer(shaded)).isCloseTo(0.02, within(5e-4));
    }

    @Test
    void tilesOfASoftFrameDoNotReachTheSharpOnes() {
        TileSharpness sharp = TileSharpness.of(SHARP, 16);
        TileSharpness soft = TileSharpness.of(SOFT, 16);
        FocusedTiles tiles = FocusedTiles.of(List.of(FLAT, sharp, FLAT));

        assertThat(tiles.tiles()).hasSize(4 * 3);
        assertThat(tiles.of(sharp).shareReaching(0.95)).isEqualTo(1);
        assertThat(tiles.of(soft).shareReaching(0.95)).isEqualTo(0);
        assertThat(tiles.withBestOf(List.of(soft)).over(tiles).reachedBy(0.5)).isLessThan(0.95);
    }

    @Test
    void aTileIsJudgedOnlyWhereOneFrameStandsOut() {
        TileSharpness sharp = TileSharpness.of(SHARP, 16);

        assertThat(FocusedTiles.of(List.of(sharp, sharp, sharp)).tiles()).isEmpty();
        assertThat(FocusedTiles.of(List.of(FLAT, FLAT, FLAT)).tiles()).isEmpty();
    }

    @Test
    void aBrighterCopyIsNotASharperOne() {
        Plane brighter = new Plane(SHARP.width(), SHARP.height());
        for (int i = 0; i < SHARP.width() * SHARP.height(); i++) brighter.samples()[i] = 1.1f * SHARP.samples()[i];
        FocusedTiles tiles = FocusedTiles.of(List.of(FLAT, TileSharpness.of(SHARP, 16), FLAT));

        assertThat(tiles.of(TileSharpness.of(brighter, 16)).reachedBy(0.5)).isCloseTo(1, within(1e-4));
    }

    @Test
    void greyIsTheRoundedLumaOfTheCodes() {
        // Rec. ITU-R BT.601: 0.299, 0.587, 0.114; pure colours give 76, 150 and 29.
        for (int c = 0; c < 3; c++) {
            Frame pure = Frame.blank(1, 1, 3);
            pure.plane(c).set(0, 0, 1);
            assertThat(Planes.grey8(pure).at(0, 0) * 255)
                    .isCloseTo(List.of(76f, 150f, 29f).get(c), within(1e-3f));
        }
    }

    private static Plane smoothed(Plane in) {
        Plane out = new Plane(in.width(), in.height());
        for (int y = 0; y < in.height(); y++) {
            for (int x = 0; x < in.width(); x++) {
                int left = Math.max(0, x - 1);
                int right = Math.min(in.width() - 1, x + 1);
                out.set(x, y, (in.at(left, y) + 2 * in.at(x, y) + in.at(right, y)) / 4);
            }
        }
        return out;
    }
}
