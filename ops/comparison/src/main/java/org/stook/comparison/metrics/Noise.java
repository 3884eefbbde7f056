package org.stook.comparison.metrics;

import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Plane;

/** How noisy an image is. */
public final class Noise {
    private Noise() {}

    /**
     * Standard deviation within a patch that is flat or shaded evenly: the root mean square of what a fitted plane
     * (a + b x + c y, least squares) leaves, with the three degrees of freedom of the fit taken off.
     */
    public static double sigma(Plane plane, Area patch) {
        double cx = patch.x() + (patch.width() - 1) / 2.0;
        double cy = patch.y() + (patch.height() - 1) / 2.0;
        double n = patch.pixels();
        double mean = 0;
        double alongX = 0;
        double alongY = 0;
        double xx = 0;
        double yy = 0;
        for (int y = patch.y(); y < patch.y() + patch.height(); y++) {
            for (int x = patch.x(); x < patch.x() + patch.width(); x++) {
                double v = plane.at(x, y);
                mean += v / n;
                alongX += (x - cx) * v;
                alongY += (y - cy) * v;
                xx += (x - cx) * (x - cx);
                yy += (y - cy) * (y - cy);
            }
        }
        double sum = 0;
        for (int y = patch.y(); y < patch.y() + patch.height(); y++) {
            for (int x = patch.x(); x < patch.x() + patch.width(); x++) {
                double fit = mean + (x - cx) * alongX / xx + (y - cy) * alongY / yy;
                sum += (plane.at(x, y) - fit) * (plane.at(x, y) - fit);
            }
        }
        return Math.sqrt(sum / (n - 3));
    }

    /**
     * White noise of a whole picture from the mean absolute response of a mask that is blind to constant and linear structure:
     * J. Immerkaer, Fast noise variance estimation, Computer Vision and Image Understanding 64(2) (1996) 300-302. Texture
     * raises it.
     */
    public static double immerkaer(Plane plane) {
        double sum = 0;
        for (int y = 1; y < plane.height() - 1; y++) {
            for (int x = 1; x < plane.width() - 1; x++) {
                double corners = plane.at(x - 1, y - 1)
                        + plane.at(x + 1, y - 1)
                        + plane.at(x - 1, y + 1)
                        + plane.at(x + 1, y + 1);
                double sides = plane.at(x, y - 1) + plane.at(x, y + 1) + plane.at(x - 1, y) + plane.at(x + 1, y);
                sum += Math.abs(corners - 2 * sides + 4 * plane.at(x, y));
            }
        }
        return Math.sqrt(Math.PI / 2) / (6.0 * (plane.width() - 2) * (plane.height() - 2)) * sum;
    }
}
