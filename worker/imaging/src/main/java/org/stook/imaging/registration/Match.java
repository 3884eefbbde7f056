package org.stook.imaging.registration;

/**
 * One tile found in two frames.
 *
 * @param px normal x in the first frame
 * @param py normal y in the first frame
 * @param qx normal x in the second frame
 * @param qy normal y in the second frame
 * @param information inverse covariance of the place in the second
 * @param zncc zero-mean normalised cross-correlation of the two tiles
 */
record Match(double px, double py, double qx, double qy, Information information, double zncc) {
    /** A symmetric 2 x 2 matrix. */
    record Information(double xx, double xy, double yy) {
        /** Squared Mahalanobis length of an error (ex, ey). */
        double chi2(double ex, double ey) {
            return xx * ex * ex + 2 * xy * ex * ey + yy * ey * ey;
        }
    }
}
