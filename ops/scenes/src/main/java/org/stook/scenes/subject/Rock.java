package org.stook.scenes.subject;

/** The lump that the crystals grow from; its depth at any point settles where a crystal comes out. */
final class Rock implements Sheet {
    private static final double BOWL = 0.81;
    private static final double LUMPS = 0.022;

    private final Tint tint;
    private final double pixel;
    private final Texture lumps;
    private final Texture specks;
    private final Texture hue;

    Rock(Grain grain, double pixel, Tint tint) {
        this.tint = tint;
        this.pixel = pixel;
        lumps = new Texture(grain, 0.07, 0.3, 1.75, 5.5);
        specks = new Texture(grain, Grain.FINEST * pixel, 0.04, 0.9, 901.3);
        hue = new Texture(grain, 0.02, 0.16, 1.2, 411.9);
    }

    /** In picture heights. */
    double depthAt(double x, double y) {
        return bowl(x, y) + LUMPS * lumps.at(x, y);
    }

    private static double bowl(double x, double y) {
        return 0.34 + BOWL * (x * x / 1.5 + y * y);
    }

    @Override
    public void sample(double x, double y, Hit hit) {
        double[] lump = new double[3];
        lumps.withSlopes(x, y, lump);
        double z = bowl(x, y) + LUMPS * lump[0];
        hit.miss(Math.max(0.3, Math.min(1, z / Mineral.RELIEF)));
        if (z > Mineral.RELIEF + 0.1) return;
        double slopeX = 2 * BOWL * x / 1.5 + LUMPS * lump[1];
        double slopeY = 2 * BOWL * y + LUMPS * lump[2];
        double inside = (Mineral.RELIEF - z) / Math.max(0.1, Edges.length(slopeX, slopeY));
        hit.cover = Edges.cover(inside, pixel);
        if (hit.cover == 0) return;
        double light = Light.onSlope(slopeX, slopeY) * (1 + 0.22 * specks.at(x, y));
        hit.colour(tint, Math.max(0.04, light));
        double warm = 0.12 * hue.at(x, y);
        hit.red *= 1 + warm;
        hit.blue *= 1 - warm;
    }

    @Override
    public Extent extent() {
        return Extent.around(0, 0, 0.8, 0.3, 1);
    }
}
