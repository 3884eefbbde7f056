package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

/** Violet crystals on a lump of grey rock. */
final class Mineral implements Subject {
    /** Picture heights from the nearest to the farthest point. */
    static final double RELIEF = 0.55;

    private static final Tint PAPER = new Tint(0.055, 0.065, 0.085);
    private static final Tint ROCK = new Tint(0.42, 0.36, 0.30);
    private static final Tint VIOLET = new Tint(0.44, 0.27, 0.62);

    private static final Tint PALE = new Tint(0.56, 0.39, 0.64);
    private static final int TRIES = 60;

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
        Rock rock = new Rock(grain, pixel, ROCK);
        List<Sheet> sheets = new ArrayList<>();
        sheets.add(new Backdrop(grain, pixel, 1.4, PAPER));
        sheets.add(rock);
        List<Crystal> crystals = new ArrayList<>();
        growths().forEach(growth -> crystals.add(new Crystal(growth, tint(growth), rock, grain, pixel)));
        sheets.addAll(Painting.backToFront(crystals));
        return sheets;
    }

    private static Tint tint(Crystal.Growth growth) {
        return VIOLET.mixed(PALE, growth.shape() % 7 / 6.0);
    }

    /** Crystals stand apart at the foot and lean outwards, so that they hide but do not pierce each other. */
    private List<Crystal.Growth> growths() {
        SplittableRandom random = new SplittableRandom(seed + 1);
        List<Crystal.Growth> growths = new ArrayList<>();
        for (int k = 0; k < TRIES; k++) {
            Crystal.Growth growth = growth(random, k * 2.399963229728653, 0.30 * Math.sqrt(k / (double) TRIES));
            if (growths.stream().noneMatch(growth::crowds)) growths.add(growth);
        }
        return growths;
    }

    private static Crystal.Growth growth(SplittableRandom random, double about, double from) {
        double turn = about + 0.7 * random.nextDouble();
        double lean = 0.10 + 2.4 * from * (0.75 + 0.5 * random.nextDouble());
        double c = StrictMath.cos(turn);
        double s = StrictMath.sin(turn);
        Vector axis = new Vector(lean * c, lean * s * 0.8, -1).unit();
        double radius = 0.035 + 0.045 * random.nextDouble();
        double length = (0.47 - 0.65 * from) * (from == 0 ? 1 : 0.75 + 0.35 * random.nextDouble());
        Vector foot = new Vector(1.2 * from * c, 0.95 * from * s, 0.49);
        return new Crystal.Growth(foot, axis, radius, length, random.nextInt(1, 1000));
    }
}
