package org.stook.imaging.registration;

import java.util.List;

/**
 * All placements of a sweep.
 *
 * @param reference the frame whose placement is the identity
 * @param model the simplest model that the evidence asks for, one for the whole sweep
 * @param parallaxPx how far parts at other depths are off at the far end of the sweep, counted from the reference, because one
 *     transform cannot place near and far parts at once; full-size pixels, 0 where nothing beyond chance was found
 * @param frames one for each frame, in sweep order
 */
public record Registration(int reference, Model model, double parallaxPx, List<Placed> frames) {
    public Registration {
        frames = List.copyOf(frames);
    }
}
