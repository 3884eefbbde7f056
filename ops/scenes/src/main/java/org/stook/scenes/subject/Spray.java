package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.SplittableRandom;

/** Fine needles that spring from a stone in all directions and cross each other: the hard case. */
final class Spray implements Subject {
    private static final Tint PAPER = new Tint(0.30, 0.29, 0.27);
    private static final Tint STONE = new Tint(0.20, 0.22, 0.19);
    private static final int NEEDLES = 300;
    private static final int LAYERS = 10;

    private final long seed;

    Spray(long seed) {
        this.seed = seed;
    }

    @Override
    public String name() {
        return "spray";
    }

    @Override
    public String title() {
        return "Harrow Cabinet HC-0588, needles, green, on stone";
    }

    @Override
    public List<Sheet> sheets(double pixel) {
        Grain grain = new Grain(seed * 31 + 5);
        List<Sheet> sheets = new ArrayList<>();
        sheets.add(new Backdrop(grain, pixel, 1.4, PAPER));
        sheets.add(new Rock(grain, pixel, STONE));
        List<Needle> needles = needles(pixel);
        for (int layer = 0; layer < LAYERS; layer++) {
            int from = layer * NEEDLES / LAYERS;
            sheets.add(new Needles(needles.subList(from, (layer + 1) * NEEDLES / LAYERS), grain, pixel));
        }
        return sheets;
    }

    /** From far to near. */
    private List<Needle> needles(double pixel) {
        SplittableRandom random = new SplittableRandom(seed + 3);
        List<Needle> needles = new ArrayList<>();
        for (int k = 0; k < NEEDLES; k++) {
            double turn = k * 2.399963229728653 + 0.4 * random.nextDouble();
            double rise = 0.06 + 0.94 * Math.sqrt(random.nextDouble());
            double reach = (0.18 + 0.24 * random.nextDouble()) * (1.15 - 0.75 * rise);
            double root = 0.07 * Math.sqrt(random.nextDouble());
            double c = StrictMath.cos(turn);
            double s = StrictMath.sin(turn);
            Vector foot = new Vector(1.5 * root * c, root * s, 0.36);
            Vector tip = new Vector(foot.x() + 1.5 * reach * c, foot.y() + reach * s, 0.36 - 0.34 * rise);
            double width = Math.max(1.0 * pixel, 0.0022 + 0.0018 * random.nextDouble());
            needles.add(new Needle(foot, tip, 0.05 * (random.nextDouble() - 0.5), width, random.nextDouble()));
        }
        needles.sort(Comparator.comparingDouble(n -> -n.tip().z()));
        return needles;
    }
}
