package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/** Violet crystals on a lump of grey rock. */
final class Mineral implements Subject {
    /** Picture heights from the nearest to the farthest point. */
    static final double RELIEF = 0.55;

    private static final double[] PAPER = {0.055, 0.065, 0.085};
    private static final double[] ROCK = {0.42, 0.36, 0.30};
    private static final double[] VIOLET = {0.44, 0.27, 0.62};

    private static final int CRYSTALS = 21;

    private final long seed;

    Mineral(long seed) {
        this.seed = seed;
    }

    @Override
    public String name() {
        return "mineral";
    }

    @Override
    public String title() {
        return "Harrow Cabinet HC-0117, quartz, violet, on matrix";
    }

    @Override
    public List<Sheet> sheets(double pixel) {
        Grain grain = new Grain(seed);
        Rock rock = new Rock(grain, pixel);
        List<Sheet> sheets = new ArrayList<>();
        sheets.add(new Backdrop(grain, pixel, 1.4, PAPER));
        sheets.add(rock);
        growths().forEach(growth -> sheets.add(new Crystal(growth, tint(growth), rock, grain, pixel)));
        return sheets;
    }

    private static double[] tint(Crystal.Growth growth) {
        return Vectors.plus(VIOLET, new double[] {0.12, 0.12, 0.02}, (growth.shape() % 7) / 6.0);
    }

    /** From the rim inwards, so that the middle ones stand in front. */
    private List<Crystal.Growth> growths() {
        SplittableRandom random = new SplittableRandom(seed + 1);
        List<Crystal.Growth> growths = new ArrayList<>();
        for (int k = 0; k < CRYSTALS; k++) {
            double turn = k * 2.399963229728653 + 0.7 * random.nextDouble();
            double from = 0.03 + 0.27 * Math.sqrt(k / (CRYSTALS - 1.0));
            double lean = 0.12 + 2.6 * from * (0.75 + 0.5 * random.nextDouble());
            double c = StrictMath.cos(turn);
            double s = StrictMath.sin(turn);
            double[] axis = Vectors.unit(new double[] {lean * c, lean * s * 0.8, -1});
            double radius = 0.045 + 0.045 * random.nextDouble();
            double length = (0.47 - 0.7 * from) * (0.75 + 0.35 * random.nextDouble());
            double[] foot = {1.2 * from * c, 0.95 * from * s, 0.49};
            growths.add(new Crystal.Growth(foot, axis, radius, length, random.nextInt(1, 1000)));
        }
        growths.sort(Comparator.comparingDouble(g -> -Math.hypot(g.foot()[0], g.foot()[1])));
        return growths;
    }

    /** The lump that the crystals grow from; its depth at any point settles where a crystal comes out. */
    static final class Rock implements Sheet {
        private final double pixel;
        private final Texture lumps;
        private final Texture specks;
        private final Texture hue;

        Rock(Grain grain, double pixel) {
            this.pixel = pixel;
            lumps = new Texture(grain, 0.035, 0.3, 1.75, 5.5);
            specks = new Texture(grain, Grain.FINEST * pixel, 0.04, 0.9, 901.3);
            hue = new Texture(grain, 0.02, 0.16, 1.2, 411.9);
        }

        /** In picture heights. */
        double depthAt(double x, double y) {
            double q = (x * x / 1.5 + y * y) / 0.16;
            return 0.34 + 0.13 * q + 0.022 * lumps.at(x, y);
        }

        @Override
        public void sample(double x, double y, Hit hit) {
            double z = depthAt(x, y);
            hit.miss(Math.max(0.3, Math.min(1, z / RELIEF)));
            double slopeX = (depthAt(x + 0.5 * pixel, y) - depthAt(x - 0.5 * pixel, y)) / pixel;
            double slopeY = (depthAt(x, y + 0.5 * pixel) - depthAt(x, y - 0.5 * pixel)) / pixel;
            double inside = (RELIEF - z) / Math.max(0.1, Math.hypot(slopeX, slopeY));
            hit.cover = Edges.cover(inside, pixel);
            if (hit.cover == 0) return;
            double light = Light.onSlope(slopeX, slopeY) * (1 + 0.22 * specks.at(x, y));
            hit.colour(ROCK, Math.max(0.04, light));
            double warm = 0.12 * hue.at(x, y);
            hit.red *= 1 + warm;
            hit.blue *= 1 - warm;
        }

        @Override
        public Extent extent() {
            return Extent.around(0, 0, 0.8, 0.3, 1);
        }
    }
}
