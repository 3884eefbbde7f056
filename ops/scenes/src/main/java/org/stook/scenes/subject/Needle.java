package org.stook.scenes.subject;

/**
 * A thin bent stick, lengths in picture heights.
 *
 * @param foot thick end
 * @param tip thin end
 * @param bend how far its middle lies beside the straight line
 * @param width half its thickness at the foot
 * @param shade 0 to 1, makes needles differ
 */
record Needle(Vector foot, Vector tip, double bend, double width, double shade) {
    /** A point in the needle's own terms: how far along (0 foot to 1 tip) and how far beside its middle line. */
    record Place(double along, double beside) {}

    Place place(double x, double y) {
        double dx = tip.x() - foot.x();
        double dy = tip.y() - foot.y();
        double square = dx * dx + dy * dy;
        double along = ((x - foot.x()) * dx + (y - foot.y()) * dy) / square;
        double beside = ((x - foot.x()) * dy - (y - foot.y()) * dx) / Math.sqrt(square);
        double held = Edges.clamp(along);
        double bent = beside - 4 * bend * held * (1 - held);
        double past = (along - held) * Math.sqrt(square);
        return new Place(held, past == 0 ? bent : Math.copySign(Edges.length(bent, past), bent));
    }

    double length() {
        return Edges.length(tip.x() - foot.x(), tip.y() - foot.y());
    }

    double depthAt(double along) {
        return foot.z() + along * (tip.z() - foot.z());
    }

    double halfWidth(double along, double pixel) {
        return Math.max(1.1 * pixel, width * (1 - 0.75 * along));
    }

    /**
     * Light on the round stick.
     *
     * @param side share of the half width, -1 to 1 to the sides
     * @param half half width in pixels; the light across thin needles is too fine to be seen
     */
    double lightAt(double side, double half) {
        double across = Math.max(-1, Math.min(1, side)) * Edges.step(1, 3, half);
        double length = length();
        double nx = across * (tip.y() - foot.y()) / length;
        double ny = -across * (tip.x() - foot.x()) / length;
        return Light.onNormal(nx, ny, -Math.sqrt(1.02 - across * across));
    }
}
