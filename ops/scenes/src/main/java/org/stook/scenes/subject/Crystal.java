package org.stook.scenes.subject;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;

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
    Crystal(Growth growth, Tint tint, Rock rock, Grain grain, double pixel) {
        this.rock = rock;
        this.grain = grain;
        this.pixel = pixel;
        this.frost = new Texture(grain, Grain.FINEST * pixel, 0.05, 0.85, growth.shape());
        Vector axis = growth.axis();
        Vector side = axis.cross(new Vector(0.31, 1, 0.17)).unit();
        Vector other = axis.cross(side);
        Vector tip = growth.foot().plus(axis, growth.length());
        SplittableRandom random = new SplittableRandom(growth.shape());
        for (int k = 0; k < 6; k++) {
            double turn = k * Math.PI / 3 + 0.2;
            Vector out = side.scaled(StrictMath.cos(turn)).plus(other, StrictMath.sin(turn));
            double wide = growth.radius() * (0.82 + 0.3 * random.nextDouble());
            Tint prismTint = tint.scaled(0.75 + 0.5 * random.nextDouble());
            add(new Facet(out, out.dot(growth.foot()) + wide, axis, prismTint));
            Vector slant = out.plus(axis, 0.75).unit();
            Tint capTint = tint.scaled(0.85 + 0.6 * random.nextDouble());
            double lowered = growth.radius() * 0.25 * random.nextDouble();
            add(new Facet(slant, slant.dot(tip) - lowered, out, capTint));
        }
        Vector down = axis.scaled(-1);
        add(new Facet(down, down.dot(growth.foot()), side, tint));
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
    record Growth(Vector foot, Vector axis, double radius, double length, int shape) {
        boolean crowds(Growth other) {
            double apart = Edges.length(foot.x() - other.foot.x(), foot.y() - other.foot.y());
            return apart < 0.8 * (radius + other.radius);
        }

        Extent extent(Vector tip) {
            double wide = radius * 1.5;
            double nearest = Math.min(tip.z(), foot.z()) - wide * Math.sqrt(1 - axis.z() * axis.z());
            return new Extent(
                    Math.min(foot.x(), tip.x()) - wide,
                    Math.min(foot.y(), tip.y()) - wide,
                    Math.max(foot.x(), tip.x()) + wide,
                    Math.max(foot.y(), tip.y()) + wide,
                    Math.max(0, nearest / Mineral.RELIEF),
                    1);
        }
    }
}
