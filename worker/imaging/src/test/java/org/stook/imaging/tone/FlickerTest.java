package org.stook.imaging.tone;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.data.Offset.offset;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Placement;
import org.stook.imaging.frame.Samples;
import org.stook.scenes.bracket.Bracket;
import org.stook.scenes.bracket.BracketPlan;
import org.stook.scenes.bracket.Picture;
import org.stook.scenes.subject.Subject;
import org.stook.scenes.subject.Subjects;

class FlickerTest {
    @Test
    void evensOutGainsOfEachChannel() {
        double[][] exposures = {{1, 1, 1}, {1.04, 1.02, 0.97}, {0.93, 0.95, 0.99}, {1.5, 1.4, 1.3}};
        List<double[]> gains = Flicker.gains(tiles(exposures, 0), 1);
        for (int i = 0; i < exposures.length; i++) {
            for (int c = 0; c < 3; c++) {
                assertThat(gains.get(i)[c]).isCloseTo(exposures[1][c] / exposures[i][c], offset(1e-9));
            }
        }
        assertThat(gains.get(1)).containsExactly(1, 1, 1);
    }

    @Test
    void tilesThatChangeOfThemselvesDoNotDecide() {
        double[][] exposures = new double[20][3];
        for (int i = 0; i < 20; i++) Arrays.fill(exposures[i], i % 2 == 0 ? 1 : 1.05);
        List<double[]> gains = Flicker.gains(tiles(exposures, 0.25), 10);
        for (int i = 0; i < 20; i++) {
            assertThat(gains.get(i)[1]).isCloseTo(i % 2 == 0 ? 1 : 1 / 1.05, offset(0.004));
        }
    }

    @Test
    void leavesGainsWithinMeasuringErrorAtExactlyOne() {
        List<double[]> gains = Flicker.gains(tiles(new double[][] {{1, 1, 1}, {1.0004, 0.9996, 1}}, 0), 0);
        assertThat(gains.get(1)).containsExactly(1, 1, 1);
    }

    @Test
    void saysNothingWhereNothingCanBeMeasured() {
        TileLight black = new TileLight(1, new double[96], new boolean[96]);
        assertThat(Flicker.gains(List.of(black, black, black), 1))
                .allSatisfy(gain -> assertThat(gain).containsExactly(1));
        assertThat(Flicker.gains(List.of(black), 0).get(0)).containsExactly(1);
        assertThatThrownBy(() -> Flicker.gains(List.of(black), 1)).hasMessageContaining("frame 1 of 1");
    }

    @Test
    void tilesThatAreClippedOrBlackAreNotUsed() {
        byte[] codes = new byte[240 * 160];
        for (int i = 0; i < codes.length; i++) codes[i] = (byte) (i % 240 < 80 ? 0 : i % 240 < 160 ? 128 : 255);
        TileLight light = TileLight.measure(
                new Samples.Eight(240, 160, 1, codes), ColourSpace.srgb().grey());
        int usable = 0;
        for (int tile = 0; tile < light.tiles(); tile++) {
            if (!light.usable()[tile]) continue;
            usable++;
            assertThat(light.mean(tile, 0)).isBetween(0.003, 0.2159); // code 128 with more or less black beside it
        }
        assertThat(usable).isBetween(96, 192);
    }

    /** Rendered brackets whose exposures are known: breathing, defocus and noise must not be taken for flicker. */
    @Test
    void findsTheExposuresOfRenderedBrackets() {
        for (Subject subject : Subjects.all(5)) {
            Bracket bracket = Bracket.of(subject, BracketPlan.of(300, 200, 7, 5));
            List<TileLight> light = new ArrayList<>();
            for (int i = 0; i < 7; i++) {
                Placement placement = Placement.of(bracket.pose(i).placement());
                light.add(TileLight.measure(samples(bracket.encoded(i)), ColourSpace.srgb(), placement));
            }
            List<double[]> gains = Flicker.gains(light, 3);
            for (int i = 0; i < 7; i++) {
                double truth = bracket.gain(3) / bracket.gain(i);
                for (double gain : gains.get(i)) {
                    assertThat(gain / truth)
                            .as("%s frame %d", subject.name(), i)
                            .isCloseTo(1, offset(0.004));
                }
            }
        }
    }

    private static Samples samples(Picture picture) {
        byte[] codes = new byte[picture.width() * picture.height() * 3];
        for (int i = 0; i < codes.length; i++) {
            codes[i] = (byte) Math.round(255 * Math.max(0, Math.min(1, picture.planes()[i % 3][i / 3])));
        }
        return new Samples.Eight(picture.width(), picture.height(), 3, codes);
    }

    /** Frames of one subject at these exposures; a share of the tiles changes at random besides. */
    private static List<TileLight> tiles(double[][] exposures, double restless) {
        double[] subject = new Random(1).doubles(96 * 3L, 0.05, 0.5).toArray();
        Random random = new Random(2);
        List<TileLight> frames = new ArrayList<>();
        for (double[] exposure : exposures) {
            double[] means = new double[subject.length];
            for (int tile = 0; tile < 96; tile++) {
                double own = random.nextDouble() < restless ? 0.7 + 0.6 * random.nextDouble() : 1;
                for (int c = 0; c < 3; c++) means[tile * 3 + c] = subject[tile * 3 + c] * exposure[c] * own;
            }
            boolean[] usable = new boolean[96];
            Arrays.fill(usable, true);
            frames.add(new TileLight(3, means, usable));
        }
        return frames;
    }
}
