package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.stook.scenes.subject.Mineral.Rock;

/** A six-sided prism with a pyramid on top, growing from the rock towards the viewer. */
final class Crystal implements Sheet {
    private final List<Facet> front = new ArrayList<>();
    private final List<Facet> back = new ArrayList<>();
    private final Rock rock;
    private final double pixel;
    private final Texture frost;
    private final Grain grain;
    private final Extent extent;

    /**
     * @param growth foot, axis, width and length of the crystal
     * @param tint linear colour
     */
    Crystal(Growth growth, double[] tint, Rock rock, Grain grain, double pixel) {
        this.rock = rock;
        this.grain = grain;
        this.pixel = pixel;
        this.frost = new Texture(grain, Grain.FINEST * pixel, 0.05, 0.85, growth.shape());
        double[] axis = growth.axis();
        double[] side = Vectors.unit(Vectors.cross(axis, new double[] {0.31, 1, 0.17}));
        double[] other = Vectors.cross(axis, side);
        double[] tip = Vectors.plus(growth.foot(), axis, growth.length());
        SplittableRandom random = new SplittableRandom(growth.shape());
        for (int k = 0; k < 6; k++) {
            double turn = k * Math.PI / 3 + 0.2;
            double[] out = Vectors.plus(Vectors.scaled(side, StrictMath.cos(turn)), other, StrictMath.sin(turn));
            double wide = growth.radius() * (0.82 + 0.3 * random.nextDouble());
            double[] prismTint = Vectors.scaled(tint, 0.75 + 0.5 * random.nextDouble());
            add(new Facet(out, Vectors.dot(out, growth.foot()) + wide, axis, prismTint));
            double[] slant = Vectors.unit(Vectors.plus(out, axis, 0.75));
            double[] capTint = Vectors.scaled(tint, 0.85 + 0.6 * random.nextDouble());
            double lowered = growth.radius() * 0.25 * random.nextDouble();
            add(new Facet(slant, Vectors.dot(slant, tip) - lowered, out, capTint));
        }
        double[] down = Vectors.scaled(axis, -1);
        add(new Facet(down, Vectors.dot(down, growth.foot()), side, tint));
        extent = growth.extent(tip);
    }

    private void add(Facet facet) {
        (facet.facesViewer() ? front : back).add(facet);
    }

    @Override
    public void sample(double x, double y, Hit hit) {
        Facet top = front.get(0);
        Facet second = top;
        double z = Double.NEGATIVE_INFINITY;
        double z2 = z;
        for (Facet facet : front) {
            double d = facet.depthAt(x, y);
            if (d > z) {
                second = top;
                z2 = z;
                top = facet;
                z = d;
            } else if (d > z2) {
                second = facet;
                z2 = d;
            }
        }
        hit.miss(extent.clampDepth(z / Mineral.RELIEF));
        double inside = insideBy(x, y, z, top);
        if (inside <= -pixel) return;
        double above = (rock.depthAt(x, y) - z) / (pixel * (top.steepness() + 0.5));
        hit.cover = Edges.step(-1, 1, inside / pixel) * Edges.step(-1, 1, above);
        if (hit.cover > 0) paint(x, y, hit, top, second, (z - z2) / (top.steepnessAgainst(second) * pixel));
    }

    /** Distance to the silhouette in picture heights, positive inside. */
    private double insideBy(double x, double y, double z, Facet top) {
        double inside = Double.POSITIVE_INFINITY;
        for (Facet facet : back) {
            inside = Math.min(inside, (facet.depthAt(x, y) - z) / facet.steepnessAgainst(top));
        }
        return inside;
    }

    private void paint(double x, double y, Hit hit, Facet top, Facet second, double fromRidge) {
        double share = Edges.step(-1, 1, fromRidge);
        double sparkle = 0.10 * frost.at(x, y);
        double light = top.lightAt(x, y, grain, pixel) + sparkle;
        hit.colour(top.tint(), Math.max(0.03, light));
        if (share >= 1) return;
        double r = hit.red;
        double g = hit.green;
        double b = hit.blue;
        hit.colour(second.tint(), Math.max(0.03, second.lightAt(x, y, grain, pixel) + sparkle));
        hit.red = Edges.mix(hit.red, r, share);
        hit.green = Edges.mix(hit.green, g, share);
        hit.blue = Edges.mix(hit.blue, b, share);
    }

    @Override
    public Extent extent() {
        return extent;
    }

    /**
     * How a crystal has grown, lengths in picture heights, z away from the viewer.
     *
     * @param foot middle of its foot
     * @param axis unit vector to the tip
     * @param radius of the prism
     * @param length from foot to tip
     * @param shape number that settles its irregularities
     */
    record Growth(double[] foot, double[] axis, double radius, double length, int shape) {
        Extent extent(double[] tip) {
            double wide = radius * 1.5;
            double nearest = Math.min(tip[2], foot[2]) - wide * Math.sqrt(1 - axis[2] * axis[2]);
            return new Extent(
                    Math.min(foot[0], tip[0]) - wide,
                    Math.min(foot[1], tip[1]) - wide,
                    Math.max(foot[0], tip[0]) + wide,
                    Math.max(foot[1], tip[1]) + wide,
                    Math.max(0, nearest / Mineral.RELIEF),
                    1);
        }
    }
}
