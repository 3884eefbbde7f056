package org.stook.scenes.subject;

import java.util.List;

/** A spiral shell with ribs, seen on its tip; the whorls fall away from the viewer. */
final class Shell implements Subject {
    /** Picture heights from the nearest to the farthest point. */
    private static final double RELIEF = 0.53;

    private static final Tint PAPER = new Tint(0.16, 0.15, 0.13);

    private final long seed;

    Shell(long seed) {
        this.seed = seed;
    }

    @Override
    public String name() {
        return "shell";
    }

    @Override
    public String title() {
        return "Harrow Cabinet HC-0342, spiral shell, ribbed";
    }

    @Override
    public List<Sheet> sheets(double pixel) {
        Grain grain = new Grain(seed);
        return List.of(new Backdrop(grain, pixel, 1.5, PAPER), new Whorls(grain, pixel));
    }

    private static final class Whorls implements Sheet {
        /** Radius grows by this factor a turn. */
        private static final double GROWTH = StrictMath.log(1.75);

        /** The outer end of the tube reaches from the rim divided by this to the rim times this. */
        private static final double MOUTH = StrictMath.sqrt(1.75);

        private static final double RIM = 0.395;
        private static final int RIBS = 26;
        private static final int LINES = 420;
        private static final Tint CREAM = new Tint(0.78, 0.66, 0.50);
        private static final Tint BROWN = new Tint(0.36, 0.17, 0.07);

        private final double pixel;
        private final Texture chalk;
        private final Texture blotch;

        Whorls(Grain grain, double pixel) {
            this.pixel = pixel;
            chalk = new Texture(grain, Grain.FINEST * pixel, 0.03, 0.85, 71.7);
            blotch = new Texture(grain, 0.02, 0.12, 1.1, 633.1);
        }

        /** How many turns out the point lies: the whole part counts whorls, the rest says where in the whorl. */
        private static double turns(double x, double y) {
            double radius = Math.max(0.004, Math.sqrt(x * x + y * y));
            return StrictMath.log(radius / RIM) / GROWTH - StrictMath.atan2(y, x) / (2 * Math.PI);
        }

        /** In picture heights; the cone with the swelling of the tube and the ribs on it. */
        private double depthAt(double x, double y) {
            double radius = Math.sqrt(x * x + y * y);
            double turns = turns(x, y);
            double across = 2 * (turns - Math.floor(turns)) - 1;
            double tube = Math.sqrt(Math.max(0.03, 1 - across * across));
            double rib = fineness(RIBS, radius) * StrictMath.cos(RIBS * StrictMath.atan2(y, x) + 2.2 * across);
            double bulge = radius * cap(radius) * tube * (0.20 + 0.035 * rib);
            return 0.62 - 0.60 * Math.max(0, 1 - radius / 0.62) - bulge;
        }

        /** The whorls are too narrow for pixels at the tip and fade into a smooth cap. */
        private double cap(double radius) {
            return Edges.step(0.015, 0.05, radius) * Edges.step(4, 16, radius / pixel);
        }

        /** What is left of a pattern that repeats so often a turn: nothing where it is finer than pixels can show. */
        private double fineness(int times, double radius) {
            return 1 - Edges.step(0.12, 0.30, times / (2 * Math.PI * radius) * pixel);
        }

        @Override
        public void sample(double x, double y, Hit hit) {
            double z = depthAt(x, y);
            hit.miss(Math.max(0, Math.min(1, z / RELIEF)));
            double turns = turns(x, y);
            double radius = Math.max(0.004, Math.sqrt(x * x + y * y));
            double inside = -turns * GROWTH * radius;
            if (x < 0 && y >= 0 && radius > RIM / MOUTH) inside = Math.min(inside, y - pixel);
            hit.cover = Edges.cover(inside, pixel);
            if (hit.cover == 0) return;
            double light = Light.onSlope(
                    (depthAt(x + pixel, y) - depthAt(x - pixel, y)) / (2 * pixel),
                    (depthAt(x, y + pixel) - depthAt(x, y - pixel)) / (2 * pixel));
            paint(x, y, hit, light, turns - Math.floor(turns));
        }

        private void paint(double x, double y, Hit hit, double light, double across) {
            double radius = Math.max(0.004, Math.sqrt(x * x + y * y));
            double lines = 0.10 * fineness(LINES, radius) * StrictMath.cos(LINES * StrictMath.atan2(y, x));
            double soft = Math.max(0.15, 16 * pixel / (GROWTH * radius));
            double wave = StrictMath.cos(4 * Math.PI * across) - 0.35 + 0.25 * blotch.at(x, y);
            double band = cap(radius) * Edges.step(-soft, soft, wave);
            double bright = Math.max(0.05, light * (1 + lines + 0.15 * chalk.at(x, y)));
            hit.colour(CREAM.mixed(BROWN, band), bright);
        }

        @Override
        public Extent extent() {
            return Extent.around(0, 0, 0.85, 0, 1);
        }
    }
}
