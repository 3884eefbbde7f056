package org.stook.scenes.subject;

/**
 * The box that holds all a sheet covers: positions in picture heights, depths in subject depths.
 *
 * @param minX left end
 * @param minY top end
 * @param maxX right end
 * @param maxY bottom end
 * @param near least depth
 * @param far greatest depth
 */
public record Extent(double minX, double minY, double maxX, double maxY, double near, double far) {
    /** Unbounded sideways. */
    public static Extent everywhere(double near, double far) {
        return new Extent(-1e6, -1e6, 1e6, 1e6, near, far);
    }

    /** Centred square of half width {@code reach}. */
    public static Extent around(double x, double y, double reach, double near, double far) {
        return new Extent(x - reach, y - reach, x + reach, y + reach, near, far);
    }

    /** The depth held to the range of this box. */
    public double clampDepth(double depth) {
        return Math.max(near, Math.min(far, depth));
    }
}
