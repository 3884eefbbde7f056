package org.stook.imaging.score;

/**
 * What the scorecard judges, each measured by the stage that knows it.
 *
 * @param coverage sharpness of the composite against its frames
 * @param sweep what the sweep reaches and leaves out
 * @param placementErrorPx the largest expected corner error of any placement, reference pixels
 * @param parallaxPx how far near and far parts are apart at the ends of the sweep
 * @param lostBorderPercent area cropped away
 * @param clippedPercent samples of the composite at either end of the scale
 * @param flickerEv the largest exposure correction between a frame and the reference frame, absolute
 * @param straysPercent frames set aside, of all that arrived
 */
public record Measurements(
        Coverage coverage,
        Sweep sweep,
        double placementErrorPx,
        double parallaxPx,
        double lostBorderPercent,
        double clippedPercent,
        double flickerEv,
        double straysPercent) {}
