package org.stook.scenes.bracket;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.stook.scenes.subject.Extent;
import org.stook.scenes.subject.Hit;
import org.stook.scenes.subject.Sheet;
import org.stook.scenes.subject.Subject;
import org.stook.scenes.subject.Tint;

/** A bright near half plane to the left of the middle before a dark far plane. */
class OcclusionTest {
    private static final float BRIGHT = 0.8f;
    private static final float DARK = 0.1f;
    private static final BracketPlan PLAN = BracketPlan.of(121, 60, 9, 1).still();
    private static final int ROW = 30;

    private static Sheet plane(double slope, double depth, double light, double rightEnd) {
        return new Sheet() {
            @Override
            public void sample(double x, double y, Hit hit) {
                hit.depth = extent().clampDepth(depth + slope * x);
                hit.cover = Math.max(0, Math.min(1, 0.5 + (rightEnd - x) / PLAN.pixel()));
                hit.colour(new Tint(1, 1, 1), light);
            }

            @Override
            public Extent extent() {
                return Extent.everywhere(slope == 0 ? depth : 0, slope == 0 ? depth : 1);
            }
        };
    }

    private static Subject scene(Sheet... sheets) {
        return new Subject() {
            @Override
            public String name() {
                return "planes";
            }

            @Override
            public String title() {
                return "Planes";
            }

            @Override
            public List<Sheet> sheets(double pixel) {
                return List.of(sheets);
            }
        };
    }

    private static Picture look(double focus, Sheet... sheets) {
        Bracket bracket = Bracket.of(scene(sheets), PLAN);
        return bracket.look(bracket.pose(PLAN.reference()), focus);
    }

    /** Share of a disc beyond a chord at distance u radii from its centre: (acos u - u sqrt(1 - u^2)) / pi (circular segment). */
    private static double segment(double u) {
        if (Math.abs(u) >= 1) return u > 0 ? 0 : 1;
        return (Math.acos(u) - u * Math.sqrt(1 - u * u)) / Math.PI;
    }

    @Test
    void defocusedForegroundBleedsOverTheBackgroundByTheDiscsShare() {
        double focus = PLAN.span().position(1);
        Picture picture = look(focus, plane(0, 1, DARK, 9), plane(0, 0, BRIGHT, 0));
        double radius = PLAN.rig().sweep(PLAN.width()).blurRadius(PLAN.span().position(0), focus);
        assertThat(radius).isGreaterThan(5);
        for (int x = 40; x <= 80; x++) {
            double share = segment((x - 60) / radius);
            assertThat((double) picture.at(1, x, ROW)).isCloseTo(DARK + share * (BRIGHT - DARK), within(0.012));
        }
    }

    @Test
    void backgroundNeverBleedsOverASharpForeground() {
        Picture picture = look(PLAN.span().position(0), plane(0, 1, DARK, 9), plane(0, 0, BRIGHT, 0));
        for (int x = 0; x < 121; x++) {
            if (x < 60) assertThat(picture.at(1, x, ROW)).isCloseTo(BRIGHT, within(1e-5f));
            if (x > 60) assertThat(picture.at(1, x, ROW)).isCloseTo(DARK, within(1e-5f));
        }
        assertThat(picture.at(1, 60, ROW)).isCloseTo((BRIGHT + DARK) / 2, within(1e-4f));
    }

    @Test
    void evenSlantedSurfaceStaysEvenWhateverIsInFocus() {
        for (double focus = 0; focus <= 8; focus += 2) {
            Picture picture = look(focus, plane(0, 1, DARK, 9), plane(0.5, 0.5, BRIGHT, 9));
            for (float v : picture.planes()[1]) assertThat(v).isCloseTo(BRIGHT, within(1e-4f));
        }
    }
}
