package org.stook.imaging.registration;

import java.util.List;
import org.stook.imaging.frame.Placement;

/**
 * The outcome of an adjustment.
 *
 * @param placements reference to frame, normal coordinates
 * @param scale2 for each pair how many times larger its squared errors are than the tiles promised
 * @param covariances of each frame's motion parameters, normal units
 */
record Adjusted(List<Placement> placements, double[] scale2, double[][][] covariances) {
    /** Expected error of a frame at the normal point (x, y), one sigma over both directions, normal units. */
    double errorAt(int frame, double x, double y) {
        double[][] c = covariances[frame];
        double[] gx = new double[8];
        double[] gy = new double[8];
        Generators.at(x, y, gx, gy);
        double variance = 0;
        for (int a = 0; a < c.length; a++) {
            for (int b = 0; b < c.length; b++) variance += c[a][b] * (gx[a] * gx[b] + gy[a] * gy[b]);
        }
        return Math.sqrt(Math.max(0, variance));
    }
}
