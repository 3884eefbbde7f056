package org.stook.imaging.blend;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Collections;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.stook.imaging.frame.Frame;
import org.stook.imaging.frame.Plane;

/** What every blend method promises. A method's test extends this and gives the method. */
abstract class BlendMethodContract {
    abstract BlendMethod method();

    @Test
    void isListedUnderItsName() {
        assertThat(BlendMethods.byName(method().name())).get().hasSameClassAs(method());
        assertThat(method().name()).matches("[a-z]+(-[a-z]+)*");
    }

    @Test
    void givesBackASingleFrame() {
        Frame frame = Stacks.texture(61, 47, 3, 1);

        Blended blended = Stacks.blend(method(), List.of(frame), 2);

        Stacks.assertClose(blended.composite(), frame, 2e-6);
        assertThat(blended.sourceMap()).hasSize(61 * 47).containsOnly((short) 0);
    }

    @Test
    void givesBackIdenticalFrames() {
        Frame frame = Stacks.texture(61, 47, 3, 2);

        Blended blended = Stacks.blend(method(), Collections.nCopies(5, frame), 2);

        Stacks.assertClose(blended.composite(), frame, 2e-6);
    }

    @ParameterizedTest
    @CsvSource({"1,1", "1,9", "9,1", "2,2", "3,3", "5,40", "33,65", "101,77"})
    void worksOnAnySize(int width, int height) {
        List<Frame> frames = List.of(
                Stacks.texture(width, height, 1, 3),
                Stacks.texture(width, height, 1, 4),
                Stacks.texture(width, height, 1, 5));

        Blended blended = Stacks.blend(method(), frames, 3);

        assertThat(blended.composite().width()).isEqualTo(width);
        assertThat(blended.composite().height()).isEqualTo(height);
        assertThat(blended.sourceMap()).hasSize(width * height);
        assertThat(blended.depthMap().sameSizeAs(blended.composite().plane(0))).isTrue();
        for (float v : blended.composite().plane(0).samples()) assertThat(v).isBetween(-0.5f, 1.5f);
    }

    @ParameterizedTest
    @ValueSource(ints = {2, 7})
    void givesTheSameBitsWhateverTheThreads(int threads) {
        List<Frame> frames = Stacks.twoDistances(203, 150, 6, 0.01);

        Blended one = Stacks.blend(method(), frames, 1);
        Blended many = Stacks.blend(method(), frames, threads);

        for (int c = 0; c < 3; c++) {
            assertThat(many.composite().plane(c).samples())
                    .isEqualTo(one.composite().plane(c).samples());
        }
        assertThat(many.sourceMap()).isEqualTo(one.sourceMap());
        assertThat(many.depthMap().samples()).isEqualTo(one.depthMap().samples());
    }

    @Test
    void doesNotReadALentFrameAfterwards() {
        List<Frame> frames = Stacks.twoDistances(90, 70, 4, 0.01);
        Blended kept = Stacks.blend(method(), frames, 2);

        Blended lent = Stacks.blendLent(method(), frames);

        assertThat(lent.composite().plane(1).samples())
                .isEqualTo(kept.composite().plane(1).samples());
    }

    @Test
    void decidesOnceForAllChannels() {
        List<Frame> frames = Stacks.twoDistances(120, 90, 5, 0.01).stream()
                .map(f -> new Frame(List.of(f.plane(1), f.plane(1), f.plane(1))))
                .toList();

        Blended blended = Stacks.blend(method(), frames, 2);

        assertThat(blended.composite().plane(0).samples())
                .isEqualTo(blended.composite().plane(1).samples())
                .isEqualTo(blended.composite().plane(2).samples());
    }

    @Test
    void neverAddsNoiseToAFlatFieldAndAveragesItOut() {
        List<Frame> frames = Stacks.flat(160, 120, 10, 0.02);

        Frame composite = Stacks.blend(method(), frames, 2).composite();

        double single = Stacks.deviation(frames.get(0).plane(0));
        assertThat(Stacks.deviation(composite.plane(0))).isLessThanOrEqualTo(0.6 * single);
        for (double tile : Stacks.tileDeviations(composite.plane(0), 20))
            assertThat(tile).isLessThan(single);
        assertThat(Stacks.mean(composite.plane(0))).isCloseTo(0.5, within(0.001));
    }

    @Test
    void takesEachHalfFromTheFrameWhereItIsSharp() {
        List<Frame> frames = Stacks.twoDistances(200, 120, 6, 0.004);
        Frame truth = Stacks.texture(200, 120, 3, Stacks.SCENE);

        Blended blended = Stacks.blend(method(), frames, 2);

        // Away from the border between the distances the composite is nearly as good as the sharp frame itself.
        assertThat(Stacks.psnr(blended.composite(), truth, 10, 80)).isGreaterThan(40);
        assertThat(Stacks.psnr(blended.composite(), truth, 120, 190)).isGreaterThan(40);
        assertThat(Stacks.commonRank(blended.sourceMap(), 200, 10, 80)).isEqualTo(1);
        assertThat(Stacks.commonRank(blended.sourceMap(), 200, 120, 190)).isEqualTo(4);
        assertThat(Stacks.median(blended.depthMap(), 10, 80)).isCloseTo(1, within(0.1));
        assertThat(Stacks.median(blended.depthMap(), 120, 190)).isCloseTo(4, within(0.1));
    }

    @Test
    void staysWithinTheRangeOfTheFrames() {
        List<Frame> frames = Stacks.twoDistances(200, 120, 6, 0);

        Plane composite = Stacks.blend(method(), frames, 2).composite().plane(0);

        for (int y = 0; y < 120; y++) {
            for (int x = 0; x < 200; x++) {
                float low = Float.MAX_VALUE;
                float high = -Float.MAX_VALUE;
                for (Frame frame : frames) {
                    low = Math.min(low, frame.plane(0).at(x, y));
                    high = Math.max(high, frame.plane(0).at(x, y));
                }
                assertThat(composite.at(x, y)).isBetween(low - 0.06f, high + 0.06f);
            }
        }
    }
}
