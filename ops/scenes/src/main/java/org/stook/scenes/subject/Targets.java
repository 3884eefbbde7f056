package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.List;
import org.stook.scenes.subject.FlatPart.Finish;

/** What is printed on the cards for measuring. */
final class Targets {
    private static final double PITCH = 0.15;
    private static final double SIZE = 0.12;
    private static final int COLUMNS = 6;
    private static final double[] GREYS = {0.9, 0.7, 0.52, 0.38, 0.28, 0.20, 0.14, 0.095, 0.062, 0.038, 0.022, 0.011};
    private static final List<Tint> COLOURS = List.of(
            new Tint(0.42, 0.05, 0.04),
            new Tint(0.08, 0.30, 0.07),
            new Tint(0.04, 0.06, 0.34),
            new Tint(0.75, 0.55, 0.05),
            new Tint(0.48, 0.09, 0.30),
            new Tint(0.05, 0.27, 0.38),
            new Tint(0.55, 0.30, 0.18),
            new Tint(0.14, 0.20, 0.09),
            new Tint(0.20, 0.14, 0.36),
            new Tint(0.62, 0.24, 0.05),
            new Tint(0.30, 0.45, 0.08),
            new Tint(0.12, 0.05, 0.03));

    private Targets() {}

    /** A dark square turned by 5 degrees on light ground, as ISO 12233 asks for, within a ring of texture to align by. */
    static Finish slantedEdge(Grain grain, double pixel) {
        Texture texture = texture(grain, pixel);
        double c = StrictMath.cos(StrictMath.toRadians(5));
        double s = StrictMath.sin(StrictMath.toRadians(5));
        return (x, y, hit) -> {
            double across = Math.abs(x * c + y * s);
            double down = Math.abs(y * c - x * s);
            double dark = Edges.cover(0.2 - Math.max(across, down), pixel);
            double ring = Edges.step(0.33, 0.35, Math.max(Math.abs(x), Math.abs(y)));
            double ground = Math.max(0.04, 0.6 - ring * (0.27 - 0.09 * texture.at(x, y)));
            hit.colour(Tint.WHITE, Edges.mix(ground, 0.15, dark));
        };
    }

    /** Twelve colours over twelve greys. */
    static List<Patch> patches() {
        List<Patch> patches = new ArrayList<>();
        for (int k = 0; k < GREYS.length + COLOURS.size(); k++) {
            Tint tint = k < COLOURS.size() ? COLOURS.get(k) : Tint.WHITE.scaled(GREYS[k - COLOURS.size()]);
            double left = (k % COLUMNS - COLUMNS / 2) * PITCH + (PITCH - SIZE) / 2;
            double top = (k / COLUMNS - 2) * PITCH + (PITCH - SIZE) / 2;
            patches.add(new Patch(left, top, SIZE, tint));
        }
        return List.copyOf(patches);
    }

    static Finish patchCard(Grain grain, double pixel) {
        Texture texture = texture(grain, pixel);
        List<Patch> patches = patches();
        return (x, y, hit) -> {
            hit.colour(Tint.WHITE, Math.max(0.02, 0.22 + 0.07 * texture.at(x, y)));
            for (Patch patch : patches) {
                double share = Edges.cover(patch.inside(x, y), pixel);
                if (share > 0) hit.mix(patch.tint(), share);
            }
        };
    }

    private static Texture texture(Grain grain, double pixel) {
        return new Texture(grain, Grain.FINEST * pixel, 0.04, 0.9, 13.7);
    }
}
