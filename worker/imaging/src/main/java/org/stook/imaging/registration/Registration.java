package org.stook.imaging.registration;

import java.util.List;

/**
 * All placements of a sweep.
 *
 * @param reference the frame whose placement is the identity
 * @param model the simplest model that the evidence asks for, one for the whole sweep
 * @param frames one for each frame, in sweep order
 */
public record Registration(int reference, Model model, List<Placed> frames) {
    public Registration {
        frames = List.copyOf(frames);
    }
}
