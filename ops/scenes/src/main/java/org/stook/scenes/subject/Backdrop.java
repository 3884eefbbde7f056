package org.stook.scenes.subject;

/** Studio paper behind the subject: a gradient, soft clouds and fibre. */
final class Backdrop implements Sheet {
    private final double depth;
    private final Tint tint;
    private final Texture clouds;
    private final Texture fibre;

    Backdrop(Grain grain, double pixel, double depth, Tint tint) {
        this.depth = depth;
        this.tint = tint;
        this.clouds = new Texture(grain, 0.09, 0.4, 1.3, 311.7);
        this.fibre = new Texture(grain, Grain.FINEST * pixel, 3.5 * Grain.FINEST * pixel, 0.9, 57.1);
    }

    @Override
    public void sample(double x, double y, Hit hit) {
        hit.depth = depth;
        hit.cover = 1;
        double light = 0.75 - 0.35 * y + 0.12 * clouds.at(x, y) + 0.10 * fibre.at(x, y);
        hit.colour(tint, Math.max(0.02, light));
    }

    @Override
    public Extent extent() {
        return Extent.everywhere(depth, depth);
    }
}
