package org.stook.scenes.subject;

/** One plane face of a crystal with its light, tint and growth lines. */
final class Facet {
    private static final double LINES = 0.16;

    private final double slopeX;
    private final double slopeY;
    private final double offset;
    private final boolean facesViewer;
    private final double light;
    private final double lineX;
    private final double lineY;
    private final Tint tint;

    /**
     * @param normal outward unit normal
     * @param distance of the plane from the origin along the normal
     * @param across direction across which the growth lines run
     */
    Facet(Vector normal, double distance, Vector across, Tint tint) {
        double nz = Math.abs(normal.z()) < 0.02 ? Math.copySign(0.02, normal.z()) : normal.z();
        slopeX = -normal.x() / nz;
        slopeY = -normal.y() / nz;
        offset = distance / nz;
        facesViewer = nz < 0;
        light = Light.onNormal(normal.x(), normal.y(), normal.z());
        double gx = across.x() + across.z() * slopeX;
        double gy = across.y() + across.z() * slopeY;
        double g = Math.max(1e-9, Edges.length(gx, gy));
        lineX = gx / g;
        lineY = gy / g;
        this.tint = tint;
    }

    boolean facesViewer() {
        return facesViewer;
    }

    double depthAt(double x, double y) {
        return offset + slopeX * x + slopeY * y;
    }

    double steepness() {
        return Edges.length(slopeX, slopeY);
    }

    /** Change of the depth between two faces per picture height, never 0. */
    double steepnessAgainst(Facet other) {
        return Math.max(1e-6, Edges.length(slopeX - other.slopeX, slopeY - other.slopeY));
    }

    Tint tint() {
        return tint;
    }

    double lightAt(double x, double y, Grain grain, double pixel) {
        double u = (x * lineX + y * lineY) / (Grain.FINEST * pixel);
        double v = (y * lineX - x * lineY) / (14 * Grain.FINEST * pixel);
        double fine = grain.at(u, v + 211.3);
        double broad = grain.at(u / 5, v / 5 + 17.9);
        return light * (1 + LINES * (0.6 * fine + 0.8 * broad));
    }
}
