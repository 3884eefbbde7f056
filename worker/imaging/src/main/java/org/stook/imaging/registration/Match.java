package org.stook.imaging.registration;

/**
 * One tile found in two frames: normal position in the first, normal position in the second, and the inverse covariance
 * (xx, xy, yy) of the second, in normal units.
 *
 * @param zncc zero-mean normalised cross-correlation of the two tiles
 */
record Match(double px, double py, double qx, double qy, double ixx, double ixy, double iyy, double zncc) {
    /** Squared Mahalanobis length of an error (ex, ey). */
    double chi2(double ex, double ey) {
        return ixx * ex * ex + 2 * ixy * ex * ey + iyy * ey * ey;
    }
}
