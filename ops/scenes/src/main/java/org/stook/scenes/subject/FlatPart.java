package org.stook.scenes.subject;

/** A flat part of a watch, slightly tilted, with a bright bevel along its edge. */
final class FlatPart implements Sheet {
    private static final double BEVEL = 0.0035;

    private final Outline outline;
    private final Tilt tilt;
    private final Finish finish;
    private final Extent extent;
    private final double pixel;

    FlatPart(Outline outline, Tilt tilt, Finish finish, double pixel) {
        this.outline = outline;
        this.tilt = tilt;
        this.finish = finish;
        this.pixel = pixel;
        extent = tilt.extent();
    }

    @Override
    public void sample(double x, double y, Hit hit) {
        hit.miss(extent.clampDepth(tilt.depthAt(x, y)));
        double inside = outline.inside(x, y);
        hit.cover = Edges.cover(inside, pixel);
        if (hit.cover == 0) return;
        finish.paint(x, y, hit);
        double wide = Math.max(BEVEL, 1.5 * pixel);
        double bevel = 1 + 0.45 * (1 - Edges.step(wide, wide + 2 * pixel, inside));
        hit.red = Math.min(0.95, hit.red * bevel);
        hit.green = Math.min(0.95, hit.green * bevel);
        hit.blue = Math.min(0.95, hit.blue * bevel);
    }

    @Override
    public Extent extent() {
        return extent;
    }

    /** Colours a point of a part. */
    @FunctionalInterface
    interface Finish {
        void paint(double x, double y, Hit hit);
    }

    /**
     * A plane through a centre.
     *
     * @param x centre, picture heights
     * @param y centre, picture heights
     * @param reach greatest distance of the part from the centre, picture heights
     * @param depth at the centre, 0 to 1
     * @param slopeX depth a picture height to the right
     * @param slopeY depth a picture height down
     */
    record Tilt(double x, double y, double reach, double depth, double slopeX, double slopeY) {
        double depthAt(double atX, double atY) {
            return depth + slopeX * (atX - x) + slopeY * (atY - y);
        }

        Extent extent() {
            double change = reach * (Math.abs(slopeX) + Math.abs(slopeY));
            return Extent.around(x, y, reach, Math.max(0, depth - change), Math.min(1, depth + change));
        }
    }
}
