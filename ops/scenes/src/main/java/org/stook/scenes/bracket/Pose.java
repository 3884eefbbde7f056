package org.stook.scenes.bracket;

/**
 * Where a frame lies: enlarged and turned about the optical centre, then shifted, against the reference frame.
 *
 * @param scale 1 for the reference frame
 * @param radians clockwise as seen on the screen
 * @param shiftX pixels to the right
 * @param shiftY pixels down
 * @param centreX optical centre, pixels
 * @param centreY optical centre, pixels
 */
public record Pose(double scale, double radians, double shiftX, double shiftY, double centreX, double centreY) {

    /** Reference pixel to frame pixel, 3 x 3, row-major. */
    public double[] placement() {
        double a = scale * StrictMath.cos(radians);
        double b = scale * StrictMath.sin(radians);
        double tx = centreX + shiftX - a * centreX + b * centreY;
        double ty = centreY + shiftY - b * centreX - a * centreY;
        return new double[] {a, 0 - b, tx, b, a, ty, 0, 0, 1};
    }

    /** Frame pixel to reference pixel, 3 x 3, row-major. */
    public double[] inverse() {
        double a = StrictMath.cos(radians) / scale;
        double b = StrictMath.sin(radians) / scale;
        double fromX = centreX + shiftX;
        double fromY = centreY + shiftY;
        double tx = centreX - a * fromX - b * fromY;
        double ty = centreY + b * fromX - a * fromY;
        return new double[] {a, b, tx, 0 - b, a, ty, 0, 0, 1};
    }
}
