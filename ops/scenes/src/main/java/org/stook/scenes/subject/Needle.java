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
record Needle(double[] foot, double[] tip, double bend, double width, double shade) {
    /** A point in the needle's own terms: how far along (0 foot to 1 tip) and how far beside its middle line. */
    record Place(double along, double beside) {}

    Place place(double x, double y) {
        double dx = tip[0] - foot[0];
        double dy = tip[1] - foot[1];
        double square = dx * dx + dy * dy;
        double along = ((x - foot[0]) * dx + (y - foot[1]) * dy) / square;
        double beside = ((x - foot[0]) * dy - (y - foot[1]) * dx) / Math.sqrt(square);
        double held = Edges.clamp(along);
        double bent = beside - 4 * bend * held * (1 - held);
        double past = (along - held) * Math.sqrt(square);
        return new Place(held, past == 0 ? bent : Math.copySign(Math.hypot(bent, past), bent));
    }

    double length() {
        return Math.hypot(tip[0] - foot[0], tip[1] - foot[1]);
    }

    double depthAt(double along) {
        return foot[2] + along * (tip[2] - foot[2]);
    }

    double halfWidth(double along, double pixel) {
        return Math.max(0.9 * pixel, width * (1 - 0.75 * along));
    }

    /** Light on the round stick at this share of its half width, -1 to 1 to the sides. */
    double lightAt(double side) {
        double across = Math.max(-1, Math.min(1, side));
        double length = length();
        double nx = across * (tip[1] - foot[1]) / length;
        double ny = -across * (tip[0] - foot[0]) / length;
        return Light.onNormal(nx, ny, -Math.sqrt(1.02 - across * across));
    }
}
