package org.stook.imaging.registration;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.awt.geom.AffineTransform;
import java.awt.geom.Point2D;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.stook.imaging.frame.Placement;

/** On real frames that others published. */
@Tag("published-data")
class PublishedRegistrationTest {
    /** By focus_lambda.csv beside the frames. */
    private static final List<String> NEWSPAPER = numbered(10, 8, 7, 4, 2, 3, 5, 6, 9, 11, 12, 13);
    /** In the order of focus that {@link org.stook.imaging.survey.SweepSurvey} finds. */
    private static final List<String> DESK = numbered(11, 8, 6, 4, 3, 2, 5, 7, 9, 10);

    /**
     * Light-field refocus stacks of github.com/behnam/python-lfp-reader (commit d1a50810, GPL-3.0): all frames are computed
     * from one exposure through fixed microlenses, so nothing should breathe. What is found adds up to 0.0023 from end to
     * end, evenly with focus; phase correlation of tiles, done apart from this code, gave 0.0003 to 0.0005 where this gives
     * 0.0006, so some of it is the frames' own and some the pull of a blur that is no disc.
     */
    @Test
    void findsNextToNoBreathingInLightFieldStacks() throws Exception {
        staysAtScaleOne(PublishedFrames.of("newspaper_12f", NEWSPAPER), 4);
        staysAtScaleOne(PublishedFrames.of("desk_10f", DESK), 4);
    }

    private static void staysAtScaleOne(PublishedFrames frames, int reference) throws Exception {
        Registration found = new Registrar(2).register(frames, reference);
        double before = Double.NaN;
        for (Placed placed : found.frames()) {
            double scale = placed.placement().scaleAt(frames.width() / 2.0, frames.height() / 2.0);
            assertThat(scale).isCloseTo(1, within(2e-3));
            if (!Double.isNaN(before)) assertThat(scale / before).isCloseTo(1, within(1.1e-3));
            before = scale;
        }
        assertThat(found.frames()).allMatch(placed -> placed.doubt().isEmpty());
        assertThat(found.model()).isEqualTo(Model.SIMILARITY);
    }

    /** "balls" of github.com/wcy199705/DfFintheWild (commit 8ba434f5, MIT licence): the lens breathes by about 6 %. */
    @Test
    void findsTheBreathingOfARealLensWithoutABreak() throws Exception {
        PublishedFrames balls = PublishedFrames.of("balls_10f", numbered(0, 1, 2, 3, 4, 5, 6, 7, 8, 9));
        Registration found = new Registrar(2).register(balls, 4);
        double[] scale = found.frames().stream()
                .mapToDouble(p -> p.placement().scaleAt(640, 360))
                .toArray();
        assertThat(scale[9] / scale[0] - 1).isCloseTo(0.06, within(0.01));
        for (int f = 0; f < 9; f++) assertThat(scale[f + 1]).isGreaterThan(scale[f]);
        assertThat(found.model()).isEqualTo(Model.SIMILARITY);
        assertThat(found.frames()).allMatch(Placed::registered);
        assertThat(found.frames()).allMatch(p -> p.doubt().isEmpty());
    }

    /** Java2D resamples, and Java2D's own map is the truth: nothing of ours has part in it. */
    @Test
    void findsAKnownMapOfARealFrame() throws Exception {
        PublishedFrames balls = PublishedFrames.of("balls_10f", numbered(4));
        double[][] maps = {{1.02, 0.4, 3.3, -2.7}, {0.97, -1.5, -20.2, 11.6}, {1, 0, 0.5, 0.25}};
        for (double[] m : maps) {
            AffineTransform map = new AffineTransform();
            map.translate(640 + m[2], 360 + m[3]);
            map.rotate(Math.toRadians(m[1]));
            map.scale(m[0], m[0]);
            map.translate(-640, -360);
            Placement found = new Registrar(2)
                    .register(balls.withItself(0, map), 0)
                    .frames()
                    .get(1)
                    .placement();
            for (double x : new double[] {0, 640, 1280}) {
                for (double y : new double[] {0, 360, 720}) {
                    // Java2D counts from the corner of the first pixel, placements from its centre.
                    Point2D truth = map.transform(new Point2D.Double(x, y), null);
                    double ex = found.x(x - 0.5, y - 0.5) + 0.5 - truth.getX();
                    double ey = found.y(x - 0.5, y - 0.5) + 0.5 - truth.getY();
                    assertThat(Math.hypot(ex, ey)).isLessThan(0.1);
                }
            }
        }
    }

    private static List<String> numbered(int... numbers) {
        return IntStream.of(numbers).mapToObj("%02d.jpg"::formatted).toList();
    }
}
