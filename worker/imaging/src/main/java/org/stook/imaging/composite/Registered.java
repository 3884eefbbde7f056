package org.stook.imaging.composite;

import java.util.List;
import org.stook.imaging.frame.Area;
import org.stook.imaging.frame.Placement;

/**
 * The sweep with every frame in its place.
 *
 * @param frames those to blend, in sweep order
 * @param outside those of the sweep that the span leaves out
 * @param unplaced frames that could not be registered
 * @param model of the placements, as reports show it
 * @param worstCornerErrorPx the largest expected corner error of a blended frame
 * @param parallaxPx what one transform per frame leaves over at the ends of the sweep
 * @param area that all blended frames cover, reference pixels
 */
record Registered(
        List<PlacedFrame> frames,
        List<PlacedFrame> outside,
        List<FrameRecord> unplaced,
        String model,
        double worstCornerErrorPx,
        double parallaxPx,
        Area area) {

    /**
     * A frame and where it lies.
     *
     * @param doubt what a person should know about its placement; empty if nothing
     */
    record PlacedFrame(Sighting frame, Placement placement, double cornerErrorPx, String doubt) {}
}
